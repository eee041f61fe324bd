using System.Security.Cryptography;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Triage.Service.Tests;
using Xunit;

namespace Triage.Browser.Tests;

/// <summary>Every page at the sizes and in the colours people have; nothing that keeps anybody out.</summary>
public sealed class PagesTests(PagesTests.InUse shared) : IClassFixture<PagesTests.InUse>
{
    /// <summary>A job in which something was recorded.</summary>
    private const string Recorded = "2026-022";

    internal static readonly (string Name, string Path)[] Pages =
    [
        ("shelf", "/"),
        ("ask", "/ask?machine=Pellwick+S-40&complaint=power+lamp+lit%2C+nothing+on+the+display%2C+no+sound"),
        ("ask-causes", "/ask/causes?machine=Pellwick+S-40&complaint=power+lamp+lit%2C+nothing+on+the+display%2C+no+sound"),
        ("ask-unknown", "/ask?machine=Zorbelic+9&complaint=hums"),
        ("job-open", "/jobs/2026-022"),
        ("job-reset", "/jobs/2026-023"),
        ("job-findings", "/jobs/2026-022/findings"),
        ("job-causes", "/jobs/2026-022/causes"),
        ("job-steps", "/jobs/2026-022/steps"),
        ("job-readings", "/jobs/2026-022/readings"),
        ("job-parts", "/jobs/2026-022/parts"),
        ("job-strip-down", "/jobs/2026-022/strip-down"),
        ("job-drawings", "/jobs/2026-022/drawings"),
        ("job-not-listed", "/jobs/2026-022/not-listed"),
        ("job-agreed", "/jobs/2026-022/agreed"),
        ("job-log", "/jobs/2026-022/log"),
        ("job-print", "/jobs/2026-022/print"),
        ("job-print-label", "/jobs/2026-005/print/label"),
        ("job-close", "/jobs/2026-022/close"),
        ("job-closed", "/jobs/2026-005"),
        ("find", "/find?q=back-up+capacitor"),
        ("find-misspelt", "/find?q=capasitor+leeking"),
        ("find-like", "/find?like=backup-capacitor"),
        ("note", "/notes/backup-capacitor"),
        ("take-in", "/take-in?machine=Corvane+K-61&complaint=no+sound"),
        ("drawings", "/notes/corvane-k61/drawings"),
        ("part", "/notes/corvane-k61/parts/C14"),
        ("note-text", "/notes/c77-battery-lead-chafed/text"),
        ("note-history", $"/notes/{Recorded}/history"),
        ("note-version", $"/notes/{Recorded}/history/{AsItWas}"),
        ("settings", "/settings"),
        ("backup", "/backup"),
        ("verify", "/verify"),
        ("drawer", "/drawer"),
        ("forecasts", "/review/forecasts"),
        ("check", "/check"),
        ("phones", "/phones"),
        ("review", "/review"),
        ("stop", "/jobs/none"),
    ];

    /// <summary>Version of that job before.</summary>
    private static string AsItWas => Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(Path.Combine(ServedBench.Knowledge, "demo", "jobs", "2026", $"{Recorded}.md"))))[..8];

    /// <summary>Rules of axe-core that look at colours; what the others look at is the same in both.</summary>
    private static readonly AxeRunOptions ColoursOnly = new() { RunOnly = new() { Type = "rule", Values = ["color-contrast", "link-in-text-block"] } };

    [Theory]
    [InlineData(390)]
    [InlineData(1280)]
    public async Task No_page_keeps_anybody_out(int width)
    {
        await using var phone = await Phone.Open(script: true, width, at: shared.Bench);
        foreach (var (name, path) in Pages)
        {
            await phone.Go(path);
            foreach (var colours in new[] { ColorScheme.Light, ColorScheme.Dark })
            {
                await phone.Page.EmulateMediaAsync(new() { ColorScheme = colours });
                await phone.Page.ScreenshotAsync(new() { Path = Path.Combine(Artifacts, $"{name}-{width}-{colours}.png".ToLowerInvariant()), FullPage = true });
                var checking = colours == ColorScheme.Light ? phone.Page.RunAxe() : phone.Page.RunAxe(ColoursOnly);
                var result = await checking.WaitAsync(TimeSpan.FromSeconds(90), TestContext.Current.CancellationToken);
                Assert.NotEmpty(result.Passes);
                Assert.True(
                    result.Violations.Length == 0,
                    $"{path}, {colours}: {string.Join("; ", result.Violations.Select(v => $"{v.Impact} {v.Id} {v.Nodes.FirstOrDefault()?.Html}"))}");
            }
        }
    }

    /// <summary>A thumb needs 44 px (WCAG 2.2, 2.5.5, level AAA: the level AA minimum is 24), and a page as wide as the screen. Links inside a sentence are as high as its lines.</summary>
    [Fact]
    public async Task Buttons_are_big_enough_and_nothing_hangs_over_the_edge()
    {
        await using var phone = await Phone.Open(script: true, at: shared.Bench);
        foreach (var (_, path) in Pages)
        {
            await phone.Go(path);
            var small = await phone.Page.EvaluateAsync<string[]>("() => [...document.querySelectorAll('a, button, select, summary, textarea, fieldset label, .tick, input:not([type=hidden], [type=radio], [type=checkbox])')].filter(e => e.offsetParent && getComputedStyle(e).display !== 'inline' && e.getBoundingClientRect().height < 43.5).map(e => e.outerHTML.slice(0, 120))");
            Assert.True(small.Length == 0, $"{path}: {string.Join("; ", small)}");
            Assert.Equal(390, await phone.Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth"));
        }
    }

    /// <summary>A bench in use: an instrument set up, and a note with something wrong in it.</summary>
    private static void Furnish(string book)
    {
        File.AppendAllText(Path.Combine(book, "bench.yaml"), """

            instruments:
              - name: pocket meter
                kind: multimeter
                input: 10 M
                ranges:
                  - {mode: dc-volts, to: 20 V, step: 10 mV, percent: 0.5, counts: 2}
                  - {mode: ohms, to: 2 k, step: 1 ohm, percent: 0.8, counts: 3}
            """);
        var note = Path.Combine(book, "devices", "corvane-k49.md");
        File.WriteAllText(note, File.ReadAllText(note).Replace("class: electronic-keyboard", "class: electronic-keybord", StringComparison.Ordinal));
    }

    internal static string Artifacts { get; } = Directory.CreateDirectory(Path.Combine(Root(AppContext.BaseDirectory), "artifacts", "pages")).FullName;

    private static string Root(string folder) => File.Exists(Path.Combine(folder, "Triage.sln")) ? folder : Root(Path.GetDirectoryName(folder)!);

    /// <summary>One bench for all pages, with the forecasts worked out.</summary>
    public sealed class InUse : SharedBench
    {
        public override async ValueTask InitializeAsync()
        {
            await base.InitializeAsync();
            Assert.Null(Bench.Live.Steps.Line(Recorded, "lid off").Refused);
            await Bench.Live.Current.ForecastsInBackground();
        }

        protected override Task<ServedBench> Start() => ServedBench.Start(Furnish);
    }
}
