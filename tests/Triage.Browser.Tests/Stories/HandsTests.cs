using Microsoft.Playwright;
using Triage.Service.Tests;
using Xunit;

namespace Triage.Browser.Tests.Stories;

/// <summary>A job worked by people who cannot touch a screen (WCAG 2.2, 2.1.1), or touched the wrong thing.</summary>
public class HandsTests(SharedBench shared) : IClassFixture<SharedBench>
{
    private const string Job = "/jobs/2026-022";

    /// <summary>Tab and Enter alone: the outcome of the next step is recorded.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task The_next_step_is_answered_by_keyboard_alone(bool script)
    {
        await using var phone = await Phone.Open(script, at: shared.Bench);
        await phone.Go(Job);
        var before = phone.Bench.Live.Current.Notes.Find<Notes.Kinds.Job>(phone.JobId)!.Log.Length;
        const int most = 80;
        var button = phone.Page.Locator("#next .outcomes button").First;
        for (var i = 0; i < most && !await button.EvaluateAsync<bool>("b => b === document.activeElement"); i++)
            await phone.Page.Keyboard.PressAsync("Tab");
        Assert.True(await button.EvaluateAsync<bool>("b => b === document.activeElement"), "Tab never came to the first outcome.");
        Assert.NotEqual("none", await button.EvaluateAsync<string>("b => getComputedStyle(b).outlineStyle"));
        await phone.Page.Keyboard.PressAsync("Enter");
        for (var i = 0; i < most && phone.Bench.Live.Current.Notes.Find<Notes.Kinds.Job>("2026-022")!.Log.Length == before; i++)
            await phone.Page.WaitForTimeoutAsync(100);
        Assert.Equal(before + 1, phone.Bench.Live.Current.Notes.Find<Notes.Kinds.Job>("2026-022")!.Log.Length);
    }

    [Fact]
    public async Task What_was_taken_back_is_put_back_with_one_press()
    {
        await using var phone = await Phone.Open(script: true, at: shared.Bench);
        await phone.Go(Job);
        await phone.Page.GetByLabel("One line, as it comes").FillAsync("put me back");
        await phone.Click(phone.Page.GetByRole(AriaRole.Button, new() { Name = "Keep the line" }));
        await phone.Click(phone.Page.Locator("#time-line li", new() { HasText = "put me back" }).GetByRole(AriaRole.Button));
        Assert.DoesNotContain("put me back", await phone.Text("#time-line"));
        var (hazards, band) = (await phone.Page.Locator(".hazards").BoundingBoxAsync(), await phone.Page.Locator("form.remark").BoundingBoxAsync());
        Assert.True(hazards!.Y + hazards.Height <= band!.Y, "Something stands above the hazards.");
        await phone.Click(phone.Page.GetByRole(AriaRole.Button, new() { Name = "Put it back" }));
        Assert.Contains("put me back", await phone.Text("#time-line"));
    }
}
