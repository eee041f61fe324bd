using Microsoft.Playwright;
using Triage.Service.Tests;
using Xunit;

namespace Triage.Browser.Tests;

/// <summary>A phone beside the bench: Chromium at phone size, by default without JavaScript.</summary>
public sealed class Phone : IAsyncDisposable
{
    private readonly bool script;
    private readonly bool shared;

    private Phone(ServedBench bench, IPage page, bool script, bool shared) =>
        (Bench, Page, this.script, this.shared) = (bench, page, script, shared);

    public ServedBench Bench { get; }

    public IPage Page { get; }

    /// <param name="at">A bench that others look at too; null for one of its own.</param>
    /// <param name="sharp">Dots for each pixel of the page.</param>
    public static async Task<Phone> Open(bool script = false, int width = 390, ColorScheme colours = ColorScheme.Light, ServedBench? at = null, int sharp = 1)
    {
        var bench = at ?? await ServedBench.Start();
        var context = await (await Chromium.Shared).NewContextAsync(new() { JavaScriptEnabled = script, ViewportSize = new() { Width = width, Height = 844 }, ColorScheme = colours, DeviceScaleFactor = sharp, BaseURL = bench.Address.ToString(), BypassCSP = script });
        context.SetDefaultTimeout(60_000);
        var page = await context.NewPageAsync();
        return new(bench, page, script, shared: at is not null);
    }

    public Task Go(string path) => Page.GotoAsync(path);

    /// <summary>A portable computer that no other test looks at: its job.</summary>
    public string OneOfItsOwn() => Bench.Live.Steps.TakeIn(new() { Machine = "Quillander W-200", Complaint = "screen very faint" }).Job!.Id;

    /// <summary>Takes a machine in from the shelf.</summary>
    public async Task TakeIn(string machine, string complaint)
    {
        await Go("/");
        await Page.GetByLabel("What is it?").FillAsync(machine);
        await Page.GetByLabel("What does it do, or not do?").FillAsync(complaint);
        await Click(Page.GetByRole(AriaRole.Button, new() { Name = "Take it in" }));
        Assert.Contains("/jobs/", Page.Url);
    }

    /// <summary>Presses a button of the next step.</summary>
    public Task Press(string value) => Click(Page.Locator($"#next button[value='{value}']"));

    /// <summary>Presses a button that sends a form, and waits for what comes back; with the script no page is loaded.</summary>
    public async Task Click(ILocator button)
    {
        var before = script ? await Exchanged() : 0;
        await button.ClickAsync();
        if (script)
            await Page.WaitForFunctionAsync("n => Number(document.documentElement.dataset.exchanged ?? 0) > n", before);
    }

    /// <summary>The job that is looked at.</summary>
    public string JobPath => $"/jobs/{JobId}";

    public string JobId => new Uri(Page.Url).AbsolutePath.Split('/')[2];

    private Task<int> Exchanged() => Page.EvaluateAsync<int>("() => Number(document.documentElement.dataset.exchanged ?? 0)");

    public async Task<string> Text(string selector) => await Page.Locator(selector).First.InnerTextAsync();

    public async Task<string> NextStep() => await Text("#next-name");

    /// <summary>Probability of a cause in percent, as the page says it.</summary>
    public async Task<double> Percent(string fault)
    {
        var text = await Page.Locator($"#causes li[data-fault='{fault}'] .cause span").TextContentAsync();
        return text switch
        {
            "under 1 %" => 0.5,
            "over 99 %" => 99.5,
            _ => double.Parse(text!.Replace(" %", "", StringComparison.Ordinal), System.Globalization.CultureInfo.InvariantCulture),
        };
    }

    public async ValueTask DisposeAsync()
    {
        await Page.Context.DisposeAsync();
        if (!shared)
            await Bench.DisposeAsync();
    }
}
