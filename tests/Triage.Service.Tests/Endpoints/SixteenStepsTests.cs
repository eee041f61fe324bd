using System.IO.Compression;
using System.Net;
using System.Text.Json;
using Xunit;

namespace Triage.Service.Tests.Endpoints;

/// <summary>A program that has read only the OpenAPI document carries one machine through every step of the job.</summary>
public sealed class SixteenStepsTests : IAsyncLifetime
{
    private const string Complaint = "power lamp lit, nothing on the display, no sound", Job = "/api/jobs/{id}";

    private static readonly byte[] Png = Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==");

    private ServedBench bench = null!;
    private HttpClient http = null!;
    private DocumentedClient api = null!;
    private string id = "";

    public async ValueTask InitializeAsync()
    {
        bench = await ServedBench.Start();
        http = new() { BaseAddress = bench.Address };
        api = await DocumentedClient.Of(http);
    }

    public async ValueTask DisposeAsync()
    {
        http.Dispose();
        await bench.DisposeAsync();
    }

    [Fact]
    public async Task A_machine_comes_in_dead_and_goes_out_and_is_heard_of_and_the_next_one_profits()
    {
        await TakeInAndAgree();
        await LineAndFindings();
        await ResetAndChecks();
        await Strip();
        await ReadAndLookAtDrawing();
        await SwapAndPart();
        await Mend();
        await Close();
        await FindReviewAndShare();
    }

    /// <summary>1 take in.</summary>
    private async Task TakeInAndAgree()
    {
        id = (await api.Post("/api/jobs", new { machine = "Corvane K-61", complaint = Complaint, owner = "Widow Haverkorn", history = new[] { "ten years in a loft" }, worth = 90 })).GetProperty("job").GetProperty("id").GetString()!;
        Assert.NotEmpty((await Answer()).GetProperty("cautions").EnumerateArray());
        var agreed = await Step("consent", new { spendingLimit = 40, mayErase = false, originalsBack = true });
        Assert.Equal(40, agreed.GetProperty("consent").GetProperty("spendingLimit").GetDouble());
    }

    /// <summary>2 quick line with a photo, 3 findings, 4 causes ranked.</summary>
    private async Task LineAndFindings()
    {
        var line = (await Step("line", new { text = "adapter is the right one, 9.1 V at the plug" })).GetProperty("log");
        var at = line.EnumerateArray().First(e => e.GetProperty("words").GetString()!.Contains("adapter is the right one", StringComparison.Ordinal)).GetProperty("entry").GetInt32();
        await Photo(at);
        Assert.Contains(line.EnumerateArray(), e => e.GetProperty("words").GetString()!.Contains("isplay", StringComparison.Ordinal));
        var causes = (await Answer()).GetProperty("causes").EnumerateArray().ToList();
        Assert.All(causes, c => Assert.InRange(c.GetProperty("probability").GetDouble(), c.GetProperty("lower").GetDouble() - 1e-9, c.GetProperty("upper").GetDouble() + 1e-9));
        Assert.NotEmpty(causes[0].GetProperty("why").GetString()!);
    }

    /// <summary>5 resets, 6 the next step and its outcomes.</summary>
    private async Task ResetAndChecks()
    {
        Assert.Contains((await Answer()).GetProperty("resets").EnumerateArray(), r => r.GetProperty("reset").GetString() == "corvane-k61-reset" && r.TryGetProperty("blocked", out _));
        Assert.Equal(HttpStatusCode.Forbidden, (await api.Send(HttpMethod.Post, $"{Job}/resets", System.Net.Http.Json.JsonContent.Create(new { reset = "corvane-k61-reset", effect = "works" }), id)).StatusCode);
        await Step("consent", new { spendingLimit = 40, mayErase = true, originalsBack = true });
        await Step("resets", new { reset = "corvane-k61-reset", effect = "works" });
        await Step("held", new { action = "corvane-k61-reset", stillWorks = false, after = "power-loss" });
        var next = (await Answer()).GetProperty("next");
        Assert.NotEmpty(next.GetProperty("why").GetString()!);
        await Step("tested", new { test = "look-for-leakage", outcome = "no" });
        await Step("tested", new { test = "ohms-across-backup", outcome = "flat-low" });
        await Step("power", new { stage = "limited", current = "120 mA" });
    }

    /// <summary>7 strip-down with photos, and what would be left over.</summary>
    private async Task Strip()
    {
        await Step("opened", new { step = "case", shut = false });
        foreach (var thing in new[] { "14 screws", "speaker plug", "tin sheet" })
        {
            var log = (await Step("taken-off", new { what = thing, where = "tray 1", backOn = false, note = thing == "tin sheet" ? "one tab broken before" : null })).GetProperty("log");
            await Photo(log.GetArrayLength() - 1);
        }

        Assert.Equal(["tin sheet", "speaker plug", "14 screws"], Loose(await api.Get(Job, id)));
        await Step("opened", new { step = "case", shut = true });
        Assert.All((await api.Get(Job, id)).GetProperty("loose").EnumerateArray(), thing => Assert.True(thing.GetProperty("leftOver").GetBoolean()));
        await Step("opened", new { step = "case", shut = false });
    }

    /// <summary>8 readings against what is to be expected, 9 the drawing.</summary>
    private async Task ReadAndLookAtDrawing()
    {
        await Step("readings", new { from = "C14 +", to = "C14 -", mode = "ohms", value = "3 R", power = "off, drained" });
        var reading = (await api.Get($"{Job}/readings", id)).EnumerateArray().Last();
        Assert.Equal("C14", reading.GetProperty("part").GetString());
        Assert.Equal("shorted", reading.GetProperty("states").EnumerateArray().MaxBy(s => s.GetProperty("likelihood").GetDouble()).GetProperty("state").GetString());
        var drawing = (await api.Get("/api/notes/{id}/drawings", "corvane-k61")).GetProperty("drawings").EnumerateArray().First(d => d.GetProperty("shows").GetString()!.Contains("C14", StringComparison.Ordinal));
        Assert.Equal(Png[..8], (await api.File("/api/notes/{id}/drawings/{number}", "corvane-k61", drawing.GetProperty("number").GetInt32()))[..8]);
    }

    /// <summary>11 the part from the drawer, 10 swapped with the old one back, 12 what it waits for.</summary>
    private async Task SwapAndPart()
    {
        await Step("tested", new { test = "ohms-across-backup-lifted", outcome = "flat-low" });
        var needed = await api.Get($"{Job}/needed-part", id);
        Assert.Equal(("backup-capacitor", "C14"), (needed.GetProperty("part").GetString(), needed.GetProperty("fitted")[0].GetProperty("designator").GetString()));
        var fit = needed.GetProperty("inDrawer")[0];
        Assert.Equal("same", fit.GetProperty("fit").GetString());
        await Step("from-drawer", new { item = fit.GetProperty("stock").GetProperty("item").GetString() });
        await Step("swaps", new { part = "C14", fix = "replace-backup-capacitor", effect = "works", oldBack = true });
        Assert.NotEmpty((await Answer()).GetProperty("causes").EnumerateArray());
        await Step("waiting", new { @for = "soak", until = "2026-11-03T09:00:00+00:00" });
        Assert.Contains((await api.Get("/api/jobs")).EnumerateArray(), j => j.GetProperty("id").GetString() == id && j.GetProperty("waitsFor").GetString()!.StartsWith("soak", StringComparison.Ordinal));
        await Client.Body(await api.Send(HttpMethod.Delete, $"{Job}/waiting", null, id), 2);
    }

    /// <summary>14 mend, back together with nothing left over, re-checked under what showed it.</summary>
    private async Task Mend()
    {
        await Step("fixes", new { fix = "replace-backup-capacitor", effect = "works", testedBefore = true });
        while (Loose(await api.Get(Job, id)) is [var last, ..])
            await Step("taken-off", new { what = last, backOn = true });
        await Step("opened", new { step = "case", shut = true });
        Assert.Empty((await api.Get(Job, id)).GetProperty("loose").EnumerateArray());
        await Step("held", new { action = "replace-backup-capacitor", stillWorks = true, after = "power-loss" });
        await Step("held", new { action = "replace-backup-capacitor", stillWorks = true, after = "soak" });
    }

    /// <summary>15 close and follow up.</summary>
    private async Task Close()
    {
        var closed = await api.Post($"{Job}/close", new { outcome = "mended", causes = new[] { new { fault = "backup-capacitor-shorted", grade = "measured" } }, minutes = 70, lesson = "Look across C14 before anything comes off." }, id);
        Assert.Contains(closed.GetProperty("taught").EnumerateArray(), t => t.GetProperty("device").GetString() == "pellwick-s40" && t.GetProperty("after").GetDouble() > t.GetProperty("before").GetDouble());
        var heard = await Step("follow-ups", new { cameBack = false, note = "plays at the choir" });
        Assert.False(heard.GetProperty("followUps")[0].GetProperty("cameBack").GetBoolean());
    }

    /// <summary>16 find, review, share: the job is in what is given out, its owner is not.</summary>
    private async Task FindReviewAndShare()
    {
        Assert.Contains((await api.Get("/api/find?q=look+across+C14&kind=job")).GetProperty("hits").EnumerateArray(), h => h.GetProperty("id").GetString() == id);
        Assert.Contains((await api.Get("/api/review?device=corvane-k61")).GetProperty("rows").EnumerateArray(), r => r.GetProperty("jobs").EnumerateArray().Any(j => j.GetString() == id));
        using var zip = new ZipArchive(new MemoryStream(await api.File("/api/share")));
        var texts = zip.Entries.Where(e => e.Name.EndsWith(".md", StringComparison.Ordinal)).Select(e => (e.Name, Text: new StreamReader(e.Open()).ReadToEnd())).ToList();
        Assert.Contains(texts, t => t.Name == $"{id}.md");
        Assert.DoesNotContain(texts, t => t.Text.Contains("Haverkorn", StringComparison.Ordinal));
    }

    private async Task<JsonElement> Step(string step, object body) => (await api.Post($"{Job}/{step}", body, id)).GetProperty("job");

    private Task<JsonElement> Answer() => api.Get($"{Job}/answer", id);

    private async Task Photo(int entry) => await Client.Body(await api.Send(HttpMethod.Post, $"{Job}/log/{{entry}}/photos", DocumentedClient.Picture(Png), id, entry), 2);

    private static string[] Loose(JsonElement job) => [.. job.GetProperty("loose").EnumerateArray().Select(t => t.GetProperty("what").GetString()!)];
}
