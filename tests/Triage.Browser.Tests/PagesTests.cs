using System.Security.Cryptography;
using Microsoft.Playwright;
using Triage.Service.Tests;
using Xunit;

namespace Triage.Browser.Tests;

/// <summary>Every page at the sizes and in the colours people have; nothing that keeps anybody out.</summary>
public sealed class PagesTests(PagesTests.InUse shared) : IClassFixture<PagesTests.InUse>
{
    /// <summary>A job in which something was recorded.</summary>
    private const string Recorded = "2026-022";

    private static readonly (string Name, string Path)[] Pages =
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
                await Pictures.Keep(phone.Page, $"{name}-{width}-{colours}");
                var found = await Axe.Violations(phone.Page, colours == ColorScheme.Light ? [] : Axe.Colours);
                Assert.True(found.Length == 0, $"{path}, {colours}: {string.Join("; ", found)}");
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

    /// <summary>WCAG 2.2, 1.4.4.</summary>
    [Fact]
    public async Task Text_twice_as_big_still_fits_the_width()
    {
        await using var phone = await Phone.Open(script: true, width: 780, at: shared.Bench);
        foreach (var (_, path) in Pages)
        {
            await phone.Go(path);
            await phone.Page.AddStyleTagAsync(new() { Content = "html { font-size: 200% !important; } body { font-size: 36px !important; }" });
            var over = await phone.Page.EvaluateAsync<string[]>("() => [...document.querySelectorAll('main *')].filter(e => !e.closest('.wide, svg') && e.getBoundingClientRect().right > innerWidth + 1).map(e => e.outerHTML.slice(0, 100))");
            Assert.True(over.Length == 0, $"{path}: {string.Join("; ", over)}");
            Assert.Equal(780, await phone.Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth"));
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
