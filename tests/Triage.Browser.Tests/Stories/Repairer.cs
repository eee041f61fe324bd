using Microsoft.Playwright;
using Triage.Notes.Kinds;
using Xunit;

namespace Triage.Browser.Tests.Stories;

/// <summary>
/// Somebody at the bench who does whatever the page says next and answers by what is true of this machine, until something helps.
/// What is not known of the machine is as it should be.
/// </summary>
/// <param name="Truth">By finding or test: the value that is seen.</param>
/// <param name="Cures">Fixes that make it work.</param>
internal sealed record Repairer(Phone Phone, IReadOnlyDictionary<string, string> Truth, IReadOnlyCollection<string> Cures)
{
    private const int MostSteps = 40;

    /// <summary>Steps done, in order.</summary>
    public List<string> Done { get; } = [];

    public async Task UntilItWorks()
    {
        for (var i = 0; i < MostSteps; i++)
        {
            var form = Phone.Page.Locator("#next form.outcomes:not(.skip)");
            Assert.True(await form.CountAsync() == 1, $"Nothing to answer at “{await Phone.NextStep()}” after {string.Join(", ", Done)}.");
            var step = (await form.GetAttributeAsync("action"))!.Split('/')[^1].Split('#')[0];
            var about = await form.Locator("input[name=about]").GetAttributeAsync("value") ?? "";
            Done.Add(about);
            if (step == "held")
            {
                await form.Locator("select").SelectOptionAsync("soak");
                await Phone.Click(form.Locator("button[value=yes]"));
                return;
            }

            if (step == "round")
                await Tick(form);
            await Phone.Click(step is "round" ? form.Locator("button")
                : step == "secured" ? form.Locator("button[value=yes]")
                : step is "tested" or "saw" ? form.Locator($"button[value='{Shown(about)}']")
                : step == "erase" ? form.Locator("button")
                : form.Locator(Cures.Contains(about) ? "button[value=works]" : "button[value=no-change]"));
        }

        Assert.Fail($"No end after {string.Join(", ", Done)}.");
    }

    public async Task Close(string cause, string grade, params string[] damage)
    {
        await Phone.Go($"{Phone.JobPath}/close");
        var form = Phone.Page.Locator("#close form");
        await form.Locator("input[name=outcome][value=mended]").CheckAsync();
        await Open(form, $"input[name=cause][value={cause}]");
        await form.Locator($"select[name=grade-{cause}]").SelectOptionAsync(grade);
        foreach (var followed in damage)
            await Open(form, $"input[name=damage][value={followed}]");
        await Phone.Page.GetByLabel("Minutes at the bench").FillAsync("55");
        await Phone.Click(form.GetByRole(AriaRole.Button, new() { Name = "Close the job" }));
        Assert.Contains("Mended", await Phone.Text("#ended h2"));
    }

    /// <summary>Of each row of a round, what is seen.</summary>
    private async Task Tick(ILocator round)
    {
        foreach (var row in await round.Locator("fieldset").AllAsync())
        {
            var finding = (await row.Locator("input").First.GetAttributeAsync("name"))!.Split(':')[1];
            await row.Locator($"input[value='{finding}={Shown(finding)}']").CheckAsync();
        }
    }

    /// <summary>Ticks a box, unfolding what it is folded into.</summary>
    private static async Task Open(ILocator form, string box)
    {
        var tick = form.Locator(box);
        if (!await tick.IsVisibleAsync())
            await form.Locator("details", new() { Has = form.Page.Locator(box) }).Locator("summary").First.ClickAsync();
        await tick.CheckAsync();
    }

    private string Shown(string about)
    {
        var notes = Phone.Bench.Live.Current.Notes;
        var test = notes.Find<Test>(about);
        var finding = notes.Find<Finding>(test?.Reveals ?? about);
        return Truth.GetValueOrDefault(about) ?? (finding is null ? null : Truth.GetValueOrDefault(finding.Id))
            ?? finding?.Values[0].Id ?? test!.Outcomes[0].Id;
    }
}
