using Microsoft.Playwright;
using Triage.Service.Tests;
using Xunit;

namespace Triage.Browser.Tests.Stories;

/// <summary>With the script a form changes the page in place: the document stays, and so does what one is looking at.</summary>
public class NoFlickerTests(SharedBench shared) : IClassFixture<SharedBench>
{
    private const string Job = "/jobs/2026-023";

    [Fact]
    public async Task A_step_is_recorded_and_taken_back_without_loading_a_page()
    {
        await using var phone = await Phone.Open(script: true, at: shared.Bench);
        await phone.Go(Job);
        var loads = await Watched(phone.Page);
        await Keep(phone, "lid off, dust");
        await phone.Click(phone.Page.Locator("#time-line li", new() { HasText = "lid off, dust" }).GetByRole(AriaRole.Button));
        await Stayed(phone.Page, loads);
        Assert.Equal(Job, new Uri(phone.Page.Url).AbsolutePath);
    }

    [Fact]
    public async Task A_refusal_stands_in_the_same_document_where_it_is_seen_and_has_the_focus()
    {
        await using var phone = await Phone.Open(script: true, at: shared.Bench);
        await phone.Go(Job);
        var loads = await Watched(phone.Page);
        await Keep(phone, "");
        await Stayed(phone.Page, loads);
        var told = phone.Page.GetByRole(AriaRole.Alert).First;
        Assert.True(await told.EvaluateAsync<bool>("e => e === document.activeElement"), "The refusal has not got the focus.");
        Assert.InRange((await told.BoundingBoxAsync())!.Y, 0, 844);
    }

    /// <summary>A tap on a finding far down leaves the next one where it was, though the answered one moves up to those that were checked.</summary>
    [Fact]
    public async Task What_one_looks_at_stays_in_sight()
    {
        await using var phone = await Phone.Open(script: true, at: shared.Bench);
        await phone.Go("/jobs/2026-022/findings");
        var loads = await Watched(phone.Page);
        var tapped = phone.Page.Locator("fieldset[data-finding] button:not([aria-pressed=true])").Nth(20);
        await tapped.ScrollIntoViewIfNeededAsync();
        var next = await tapped.EvaluateAsync<string>("b => b.form.nextElementSibling.querySelector('fieldset').dataset.finding");
        var before = (await phone.Page.Locator($"fieldset[data-finding={next}]").BoundingBoxAsync())!.Y;
        await phone.Click(tapped);
        await Stayed(phone.Page, loads);
        Assert.Equal(before, (await phone.Page.Locator($"fieldset[data-finding={next}]").BoundingBoxAsync())!.Y, 2.0);
    }

    private static async Task Keep(Phone phone, string line)
    {
        await phone.Page.GetByLabel("One line, as it comes").FillAsync(line);
        await phone.Click(phone.Page.GetByRole(AriaRole.Button, new() { Name = "Keep the line" }));
    }

    /// <summary>Remembers the document's navigation, and collects the documents that are loaded from now on.</summary>
    private static async Task<List<string>> Watched(IPage page)
    {
        var loads = new List<string>();
        page.Request += (_, request) =>
        {
            if (request.ResourceType == "document")
                loads.Add(request.Url);
        };
        await page.EvaluateAsync("() => { window.remembered = document.querySelector('body > nav'); }");
        return loads;
    }

    private static async Task Stayed(IPage page, List<string> loads)
    {
        Assert.Empty(loads);
        Assert.True(await page.EvaluateAsync<bool>("() => window.remembered?.isConnected === true"), "The document was put in place of another.");
    }
}
