using System.Net;
using System.Text.Json;
using Xunit;

namespace Triage.Service.Tests.Endpoints;

/// <summary>A program takes one machine from coming in to being heard of again.</summary>
public class WholeJobTests(SharedBench shared) : IClassFixture<SharedBench>
{
    private const string Complaint = "power lamp lit, nothing on the display, no sound";

    private readonly ServedBench bench = shared.Bench;

    [Fact]
    public async Task A_job_goes_from_taking_in_to_follow_up()
    {
        using var client = new Client(bench.Address);
        var before = Cause(await client.Do("/api/ask", new { machine = "Pellwick S-40", complaint = Complaint }), "backup-capacitor-shorted");

        var taken = await client.Post("/api/jobs", new { machine = "Corvane K-61", complaint = Complaint, owner = "Widow Haverkorn", consent = new { spendingLimit = 40 } });
        Assert.Equal(HttpStatusCode.Created, taken.StatusCode);
        var job = taken.Headers.Location!.ToString();
        Assert.Equal("Corvane K-61", (await client.Get(job)).GetProperty("machine").GetString());

        var blocked = await client.Post($"{job}/resets", new { reset = "corvane-k61-reset", effect = "works" });
        Assert.Equal(HttpStatusCode.Forbidden, blocked.StatusCode);
        await client.Do($"{job}/consent", new { spendingLimit = 40, mayErase = true });
        await client.Do($"{job}/resets", new { reset = "corvane-k61-reset", effect = "works" });
        await client.Do($"{job}/held", new { action = "corvane-k61-reset", stillWorks = false, after = "power-loss" });
        await client.Do($"{job}/tested", new { test = "look-for-leakage", outcome = "no" });
        await client.Do($"{job}/tested", new { test = "ohms-across-backup", outcome = "flat-low" });
        await client.Do($"{job}/tested", new { test = "ohms-across-backup-lifted", outcome = "flat-low" });
        var found = (await client.Get($"{job}/answer")).GetProperty("causes")[0];
        Assert.Equal("backup-capacitor-shorted", found.GetProperty("fault").GetString());

        await client.Do($"{job}/readings", new { value = "3 Ω", from = "C14 +", to = "C14 -", mode = "resistance" });
        await client.Do($"{job}/parts", new { part = "backup-capacitor", state = "ordered", price = 2.4, shipping = 3.5, leadDays = 5 });
        await client.Do($"{job}/parts", new { part = "backup-capacitor", state = "tested-good" });
        await client.Do($"{job}/fixes", new { fix = "replace-backup-capacitor", effect = "works", testedBefore = true });
        await client.Do($"{job}/held", new { action = "replace-backup-capacitor", stillWorks = true, after = "soak" });
        var closed = await client.Do($"{job}/close", new { outcome = "mended", causes = new[] { new { fault = "backup-capacitor-shorted", grade = "measured" } }, minutes = 70 });
        Assert.Contains(closed.GetProperty("taught").EnumerateArray(), t => t.GetProperty("device").GetString() == "pellwick-s40" && t.GetProperty("after").GetDouble() > t.GetProperty("before").GetDouble());
        var heard = await client.Do($"{job}/follow-ups", new { cameBack = false, note = "plays at the choir" });
        Assert.False(heard.GetProperty("job").GetProperty("followUps")[0].GetProperty("cameBack").GetBoolean());

        var after = Cause(await client.Do("/api/ask", new { machine = "Pellwick S-40", complaint = Complaint }), "backup-capacitor-shorted");
        Assert.True(after > before, $"{before} → {after}");
        Assert.DoesNotContain(bench.Log, line => line.Contains("Haverkorn", StringComparison.Ordinal));
        Assert.Contains(bench.Log, line => line.Contains("take-in", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_writer_who_saw_an_older_state_is_told_so_and_nothing_is_written()
    {
        using var client = new Client(bench.Address);
        var read = await client.Send(HttpMethod.Get, "/api/jobs/2026-023");
        var seen = read.Headers.ETag!.ToString();
        var first = await client.Send(HttpMethod.Post, "/api/jobs/2026-023/line", new { text = "lid off, dust" }, seen);
        Assert.Equal(HttpStatusCode.OK, first.StatusCode);

        var second = await client.Send(HttpMethod.Post, "/api/jobs/2026-023/line", new { text = "written on what was seen before" }, seen);

        Assert.Equal(HttpStatusCode.PreconditionFailed, second.StatusCode);
        Assert.Contains("Read it again", (await Client.Body(second, 4)).GetProperty("detail").GetString());
        var now = await client.Send(HttpMethod.Get, "/api/jobs/2026-023");
        Assert.DoesNotContain("seen before", await now.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Equal(first.Headers.ETag!.ToString(), now.Headers.ETag!.ToString());
    }

    [Fact]
    public async Task A_reader_who_has_the_newest_state_is_sent_nothing()
    {
        using var client = new Client(bench.Address);
        var tag = (await client.Send(HttpMethod.Get, "/api/jobs/2026-022")).Headers.ETag!;
        var again = new HttpRequestMessage(HttpMethod.Get, "/api/jobs/2026-022");
        again.Headers.IfNoneMatch.Add(tag);
        Assert.Equal(HttpStatusCode.NotModified, (await client.Http.SendAsync(again, TestContext.Current.CancellationToken)).StatusCode);
    }

    [Fact]
    public async Task Owner_and_serial_number_stay_on_the_bench()
    {
        using var client = new Client(bench.Address);
        var job = await client.Get("/api/jobs/2026-022");
        Assert.DoesNotContain("Vrouwenvelder", job.ToString());
        Assert.DoesNotContain("6A-15530", job.ToString());
    }

    [Fact]
    public async Task Notes_search_review_check_and_health_answer()
    {
        using var client = new Client(bench.Address);
        Assert.Equal("up", (await client.Get("/health")).GetProperty("status").GetString());
        Assert.Equal("device", (await client.Get("/api/notes/pellwick-s40")).GetProperty("kind").GetString());
        Assert.True((await client.Get("/api/find?q=back-up+capacitor&kind=job")).GetProperty("total").GetInt32() > 0);
        Assert.True((await client.Get("/api/review?device=electronic-keyboard")).GetProperty("rows").GetArrayLength() > 0);
        Assert.Equal(JsonValueKind.Array, (await client.Get("/api/check")).ValueKind);
    }

    private static double Cause(JsonElement asking, string fault) =>
        asking.GetProperty("answer").GetProperty("causes").EnumerateArray().Single(c => c.GetProperty("fault").GetString() == fault).GetProperty("probability").GetDouble();
}
