using System.Net;
using System.Text.RegularExpressions;
using Triage.Notes.Kinds;
using Xunit;

namespace Triage.Service.Tests.Pages;

/// <summary>What the bench has, changed in the pages without any script: parts in the drawer, instruments, a drawing.</summary>
public sealed partial class BenchListsTests(SharedBench shared) : IClassFixture<SharedBench>, IDisposable
{
    private readonly ServedBench bench = shared.Bench;
    private readonly HttpClient browser = new(new HttpClientHandler { AllowAutoRedirect = false, CookieContainer = new() }) { BaseAddress = shared.Bench.Address };

    public void Dispose() => browser.Dispose();

    [Fact]
    public async Task A_job_s_part_is_offered_from_the_drawer_and_taken_from_there()
    {
        var job = bench.Live.Steps.TakeIn(new() { Machine = "Corvane K-61", Complaint = "nothing on the display, forgets everything when switched off" }).Job!.Id;
        bench.Live.Steps.Tested(job, "ohms-across-backup", "flat-low");
        var parts = await Get($"/jobs/{job}/parts");
        Assert.Contains("In the drawer: 0.1 F 5.5 V", parts);
        Assert.Contains("tin 3", parts);
        Assert.Equal(HttpStatusCode.SeeOther, (await Post("/drawer/change", ("item", Key().Match(parts).Groups[1].Value), ("job", job), ("do", "take"))).StatusCode);
        Assert.Equal(PartState.TestedGood, bench.Live.Current.Notes.Find<Job>(job)!.Log.OfType<PartMoved>().Single().State);
        Assert.Contains("1 piece<", await Get("/drawer"));
        Assert.Contains("from the drawer, tin 3", await Get($"/jobs/{job}/parts"));

        var log = bench.Live.Current.Notes.Find<Job>(job)!.Log;
        var undone = await Post($"/jobs/{job}/undo", ("about", $"{log.Length - 1}"), ("at", log[^1].At.ToString("O")));
        var page = WebUtility.HtmlDecode(await undone.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Contains("It lies in the drawer again: 2 there now.", page);
        bench.Live.Drawer.Remove(bench.Live.Current.Settings.Drawer[0].Key);
        var back = await Post($"/jobs/{job}/put-back", ("about", $"{log.Length - 1}"), ("entry", EntryField().Match(page).Groups[1].Value));
        Assert.Contains("The drawer lists no backup-capacitor 0.1 F 5.5 V to take", WebUtility.HtmlDecode(await back.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)));
    }

    [Fact]
    public async Task Parts_are_put_in_and_what_is_no_number_of_parts_is_refused_with_what_was_typed()
    {
        var refused = await Post("/drawer", ("part", "fuse"), ("rating", "T 630 mA"), ("count", "-3"), ("where", "tin 1"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        var page = await refused.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Contains("value=\"T 630 mA\"", page);
        Assert.Equal(HttpStatusCode.SeeOther, (await Post("/drawer", ("part", "fuse"), ("rating", "T 630 mA"), ("count", "3"), ("where", "tin 1"), ("tested", "yes"))).StatusCode);
        Assert.Matches("(?s)T 630 mA.*?3 pieces.*?tin 1, tested good", await Get("/drawer"));
    }

    [Fact]
    public async Task An_instrument_is_set_up_changed_and_taken_away()
    {
        var typed = new[] { ("name", "bench meter"), ("kind", "multimeter"), ("input", "10 M"), ("burden", "200 mV"), ("cannot", "esr, henries"), ("ranges", "dc-volts 20 V, step 10 mV, 0.5 % + 2") };
        Assert.Equal(HttpStatusCode.SeeOther, (await Send("", typed)).StatusCode);
        var page = await Get("/settings");
        Assert.Contains("multimeter, loads with 10 MΩ, drops 200 mV, 1 range, not esr, henries", page);
        Assert.Contains("dc-volts 20 V, step 10 mV, 0.5 % + 2", page);
        Assert.Contains("<option value=\"bench meter\">", await Get("/jobs/2026-022/readings"));

        var wrong = await Send("bench meter", [.. typed[..^1], ("ranges", "dc-volts 20 V")]);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.StatusCode);
        Assert.Contains("Line 1 of the accuracy", WebUtility.HtmlDecode(await wrong.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)));
        Assert.Equal(HttpStatusCode.SeeOther, (await Send("bench meter", [("remove", "yes")])).StatusCode);
        Assert.Contains("None set up", await Get("/settings"));
    }

    /// <summary>Without a token of this bench's own pages nothing is written.</summary>
    [Theory]
    [InlineData("/drawer")]
    [InlineData("/drawer/change")]
    [InlineData("/settings/instruments")]
    public async Task Another_site_s_form_changes_nothing(string path)
    {
        using var form = new FormUrlEncodedContent([new("part", "fuse"), new("count", "3"), new("name", "x"), new("item", bench.Live.Current.Settings.Drawer[0].Key), new("do", "remove")]);
        var before = bench.Live.Setup.Version;
        Assert.False((await browser.PostAsync(path, form, TestContext.Current.CancellationToken)).IsSuccessStatusCode);
        Assert.Equal(before, bench.Live.Setup.Version);
    }

    [Fact]
    public async Task The_demo_book_s_drawing_is_of_one_board_revision_and_its_designators_open_pages()
    {
        var board = await Get("/notes/corvane-k61/drawings?board=MB-1");
        var links = PartLink().Matches(board[..board.IndexOf("Parts by designator", StringComparison.Ordinal)]).Select(m => m.Groups[1].Value).ToList();
        Assert.Equal(["/notes/corvane-k61/parts/C14", "/notes/corvane-k61/parts/IC3"], links[..2]);
        foreach (var link in links)
            Assert.DoesNotContain("lists no part", await Get(link));
        Assert.Contains("No drawing of this board revision", await Get("/notes/corvane-k61/drawings?board=MB-2"));
        var file = await browser.GetAsync("/notes/corvane-k61/drawings/0", TestContext.Current.CancellationToken);
        Assert.Equal("image/png", file.Content.Headers.ContentType!.MediaType);
    }

    private Task<HttpResponseMessage> Send(string was, params (string, string)[] fields) => Post("/settings/instruments", [("version", bench.Live.Setup.Version), ("was", was), .. fields]);

    private async Task<HttpResponseMessage> Post(string path, params (string Name, string Value)[] fields)
    {
        var token = Token().Match(await browser.GetStringAsync("/settings", TestContext.Current.CancellationToken)).Groups[1].Value;
        return await browser.PostAsync(path, new FormUrlEncodedContent([new("__RequestVerificationToken", token), .. fields.Select(f => KeyValuePair.Create(f.Name, f.Value))]), TestContext.Current.CancellationToken);
    }

    private async Task<string> Get(string path) => WebUtility.HtmlDecode(await browser.GetStringAsync(path, TestContext.Current.CancellationToken));

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex Token();

    [GeneratedRegex("name=\"item\" value=\"([^\"]+)\"")]
    private static partial Regex Key();

    [GeneratedRegex("(?s)name=\"entry\" value=\"(.*?)\">")]
    private static partial Regex EntryField();

    [GeneratedRegex("href=\"(/notes/corvane-k61/parts/[^\"]+)\"")]
    private static partial Regex PartLink();
}
