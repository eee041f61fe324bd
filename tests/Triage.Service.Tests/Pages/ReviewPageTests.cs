using System.Net;
using System.Text.RegularExpressions;
using Xunit;

namespace Triage.Service.Tests.Pages;

/// <summary>
/// The review of one made-up device with five closed jobs, against a count by hand. Four came in with a blank display (R1, R2, R3, R5), one
/// with no sound (R4). The capacitor was replaced in R1, R2, R3 and R5; it worked in R1, R2 and R5; R1 was heard of as good, R2 came back.
/// </summary>
public sealed partial class ReviewPageTests(ReviewPageTests.MadeUp shared) : IClassFixture<ReviewPageTests.MadeUp>
{
    private readonly string page = shared.Page;

    [Fact]
    public void A_symptom_and_a_fix_are_counted_tried_worked_held_and_came_back()
    {
        Assert.Contains("5 closed jobs.", page);
        Assert.Equal(["4", "3", "1", "1"], Cells("nothing on the display", "Replace the back-up capacitor"));
    }

    /// <summary>Wilson (1927) for 3 of 4 at 90 %, z = 1.644854: centre (3 + z²/2)/(4 + z²) = 0.6491, half width 0.2930.</summary>
    [Fact]
    public void The_bar_is_the_interval_of_the_share_that_works() => Assert.Contains("36 % to 94 %", Row("nothing on the display", "Replace the back-up capacitor"));

    [Fact]
    public void The_matrix_opens_to_the_jobs_newest_first() => Assert.Equal(
        ["r5", "r3", "r2", "r1"],
        JobLink().Matches(Row("nothing on the display", "Replace the back-up capacitor")).Select(m => m.Groups[1].Value));

    /// <summary>Ohms in place (6 min) done three times, flat and low twice: 18 minutes for 2 finds. A look (2 min) done twice, nothing seen.</summary>
    [Fact]
    public void Tests_stand_by_the_minutes_that_a_find_took()
    {
        var tests = Section("Tests by what they earn");
        Assert.Equal(["3", "2", "9"], CellsOf(RowOf(tests, "Ohms across the back-up capacitor, in place")));
        Assert.Equal(["2", "0", "none in 4 min"], CellsOf(RowOf(tests, "Look for leakage round the back-up capacitor")));
        Assert.True(tests.IndexOf("Ohms across", StringComparison.Ordinal) < tests.IndexOf("Look for leakage", StringComparison.Ordinal));
    }

    [Fact]
    public void What_came_back_and_what_rests_on_hearsay_are_named()
    {
        Assert.Equal(["r2"], JobLink().Matches(Section("Came back")).Select(m => m.Groups[1].Value));
        Assert.Equal(["r4"], JobLink().Matches(Section("Rests on hearsay")).Select(m => m.Groups[1].Value));
    }

    /// <summary>The note says that a shorted back-up capacitor almost always forgets settings; R3 saw them kept. R4, hearsay, saw the same and is no contradiction.</summary>
    [Fact]
    public void A_sure_cause_without_what_it_almost_always_shows_is_a_contradiction() =>
        Assert.Equal(["r3"], JobLink().Matches(Section("Contradicts its note")).Select(m => m.Groups[1].Value));

    private static void Prepare(string demo)
    {
        File.WriteAllText(Path.Combine(demo, "devices", "made-one.md"), "---\nformat: 1\nkind: device\nid: made-one\nname: Made One\nclass: electronic-keyboard\n---\n");
        const string blank = "saw: display, value: blank", silent = "saw: sound, value: none", kept = "saw: forgets-settings, value: \"no\"";
        const string ohms = "tested: ohms-across-backup, outcome: ", look = "tested: look-for-leakage, outcome: \"no\"", fix = "fixed: replace-backup-capacitor, effect: ";
        Write(demo, 1, "measured", [blank, ohms + "flat-low", fix + "works"], cameBack: false);
        Write(demo, 2, "swapped", [blank, ohms + "flat-low", look, fix + "works"], cameBack: true);
        Write(demo, 3, "measured", [blank, kept, ohms + "climbs", fix + "no-change"]);
        Write(demo, 4, "hearsay", [silent, kept, look]);
        Write(demo, 5, "measured", [blank, fix + "works"]);
    }

    private static void Write(string demo, int number, string grade, string[] log, bool? cameBack = null) => File.WriteAllText(
        Path.Combine(demo, "jobs", "2026", $"r{number}.md"),
        $"""
        ---
        format: 1
        kind: job
        id: r{number}
        name: Made {number}
        device: made-one
        opened: 2026-01-0{number}T10:00:00+01:00
        complaint: "made up"
        log:
        {string.Join('\n', log.Select((entry, minute) => $"  - {{at: 2026-01-0{number}T10:1{minute}:00+01:00, {entry}}}"))}
        causes:
          - {"{"}fault: backup-capacitor-shorted, grade: {grade}{"}"}
        outcome: mended
        closed: 2026-01-0{number}T12:00:00+01:00
        minutes: 30
        {(cameBack is { } back ? $"follow-ups:\n  - {{on: 2026-03-01, came-back: {(back ? "true" : "false")}}}" : "worth: 80")}
        ---

        """);

    private string Row(string symptom, string fix) => Rows().Matches(page).Select(m => m.Value).Single(r => r.Contains(symptom, StringComparison.Ordinal) && r.Contains(fix, StringComparison.Ordinal));

    private string[] Cells(string symptom, string fix) => CellsOf(Row(symptom, fix));

    private static string RowOf(string section, string words) => Rows().Matches(section).Select(m => m.Value).Single(r => r.Contains(words, StringComparison.Ordinal));

    /// <summary>Words of each cell, pictures left out.</summary>
    private static string[] CellsOf(string row) => [.. Cell().Matches(row).Select(m => Markup().Replace(m.Groups[1].Value, "").Trim())];

    private string Section(string title) => page[page.IndexOf($"<h2>{title}", StringComparison.Ordinal)..] is var from && from.IndexOf("<h2>", 4, StringComparison.Ordinal) is > 0 and var end ? from[..end] : from;

    [GeneratedRegex("(?s)<tr>.*?</tr>")]
    private static partial Regex Rows();

    [GeneratedRegex("(?s)<td>(.*?)</td>")]
    private static partial Regex Cell();

    [GeneratedRegex("(?s)<svg.*?</svg>|<[^>]+>")]
    private static partial Regex Markup();

    [GeneratedRegex("href=\"/jobs/([^\"]+)\"")]
    private static partial Regex JobLink();

    public sealed class MadeUp : SharedBench
    {
        public string Page { get; private set; } = "";

        public override async ValueTask InitializeAsync()
        {
            await base.InitializeAsync();
            using var browser = new HttpClient { BaseAddress = Bench.Address };
            Page = WebUtility.HtmlDecode(await browser.GetStringAsync("/review?device=made-one"));
        }

        protected override Task<ServedBench> Start() => ServedBench.Start(Prepare);
    }
}
