using System.Net;
using System.Text.RegularExpressions;
using Xunit;

namespace Triage.Service.Tests.Pages;

/// <summary>Drawings by device and board revision, a page for each designator, and files that stay what they are: inert.</summary>
public sealed class DrawingsTests(DrawingsTests.WithDrawings shared) : IClassFixture<DrawingsTests.WithDrawings>, IDisposable
{
    private static readonly byte[] Png = [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A, 1, 2, 3];

    private readonly HttpClient browser = new(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = shared.Bench.Address };

    public void Dispose() => browser.Dispose();

    [Fact]
    public async Task A_revision_shows_its_own_drawings_and_those_of_every_revision()
    {
        var all = await Page("/notes/corvane-k61/drawings");
        Assert.Contains("MB-1 component side", all);
        Assert.Contains("MB-2 component side", all);
        var second = await Page("/notes/corvane-k61/drawings?board=MB-2");
        Assert.DoesNotContain("MB-1 component side", second);
        Assert.Contains("MB-2 component side", second);
        Assert.Contains("panel, seen from below", second);
        Assert.Contains("alt=\"MB-2 component side: C14, IC3\"", second);
        Assert.Contains("/notes/corvane-k61/parts/C14", second);
    }

    [Fact]
    public async Task A_designator_opens_what_is_known_of_its_part()
    {
        var page = await Page("/notes/corvane-k61/parts/C14");
        Assert.Contains("beside the ribbon to the panel", page);
        Assert.Contains("0.1 F 5.5 V", page);
        Assert.Contains("/notes/backup-capacitor", page);
        Assert.Contains("Tests that measure it", page);
        Assert.Contains("Was the cause", page);
        Assert.Contains("/jobs/20", page);
        Assert.Contains("lists no part Z9", await Page("/notes/corvane-k61/parts/Z9"));
    }

    [Fact]
    public async Task The_job_leads_to_the_drawings_of_its_device()
    {
        Assert.Contains("/jobs/2026-022/drawings", await Page("/jobs/2026-022"));
        Assert.Contains("Parts by designator", await Page("/jobs/2026-022/drawings"));
        Assert.Contains("/notes/corvane-k61/drawings", await Page("/notes/corvane-k61"));
    }

    [Fact]
    public async Task A_drawing_is_served_as_what_it_is_and_never_run()
    {
        var picture = await browser.GetAsync("/notes/corvane-k61/drawings/0", TestContext.Current.CancellationToken);
        Assert.Equal("image/png", picture.Content.Headers.ContentType!.MediaType);
        Assert.Contains("sandbox", picture.Headers.GetValues("Content-Security-Policy").Single());
        Assert.Equal(Png, await picture.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken));

        var page = await browser.GetAsync("/notes/corvane-k61/drawings/3", TestContext.Current.CancellationToken);
        Assert.Equal("application/octet-stream", page.Content.Headers.ContentType!.MediaType);
        Assert.Equal("attachment", page.Content.Headers.ContentDisposition!.DispositionType);
    }

    /// <summary>4 climbs out of the book, 5 is a link out of it, 6 is not there, 7 is not named.</summary>
    [Theory]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    public async Task Nothing_from_outside_the_book_is_served(int number) =>
        Assert.Equal(HttpStatusCode.NotFound, (await browser.GetAsync($"/notes/corvane-k61/drawings/{number}", TestContext.Current.CancellationToken)).StatusCode);

    private static void Prepare(string demo)
    {
        Directory.CreateDirectory(Path.Combine(demo, "drawings"));
        foreach (var name in new[] { "mb1.png", "mb2.png", "panel.png" })
            File.WriteAllBytes(Path.Combine(demo, "drawings", name), Png);
        File.WriteAllText(Path.Combine(demo, "drawings", "sheet.html"), "<script>alert(1)</script>");
        File.WriteAllText(Path.Combine(demo, "..", "outside.png"), "secret");
        File.CreateSymbolicLink(Path.Combine(demo, "drawings", "link.png"), Path.Combine(demo, "..", "outside.png"));
        var note = Path.Combine(demo, "devices", "corvane-k61.md");
        File.WriteAllText(note, Regex.Replace(File.ReadAllText(note), "(?m)^drawings:\n.*\n", """
            drawings:
              - {file: drawings/mb1.png, board: MB-1, shows: "MB-1 component side: C14, IC3"}
              - {file: drawings/mb2.png, board: MB-2, shows: "MB-2 component side: C14, IC3"}
              - {file: drawings/panel.png, shows: "panel, seen from below"}
              - {file: drawings/sheet.html, shows: "a page somebody saved"}
              - {file: ../outside.png, shows: "outside"}
              - {file: drawings/link.png, shows: "a link"}
              - {file: drawings/gone.png, shows: "gone"}

            """));
    }

    private async Task<string> Page(string path) => WebUtility.HtmlDecode(await browser.GetStringAsync(path, TestContext.Current.CancellationToken));

    public sealed class WithDrawings : SharedBench
    {
        protected override Task<ServedBench> Start() => ServedBench.Start(Prepare);
    }
}
