using System.Text.Json;

namespace Triage.Cli.Tests.Stories;

/// <summary>
/// A keyboard whose back-up capacitor is shorted: a reset wakes it until power is lost, a check in place finds the capacitor,
/// and what the job taught reaches another model that has the same role.
/// </summary>
public sealed class BuriedResetTests
{
    private const string Complaint = "power lamp lit, nothing on the display, no sound";

    /// <summary>What a reset that only holds until power is lost points to.</summary>
    private static readonly string[] BackupFaults = ["backup-capacitor-shorted", "backup-capacitor-leaking", "backup-capacitor-open", "backup-capacitor-low", "trace-eaten"];

    [Theory]
    [InlineData("")]
    [InlineData(RenamedIds.Suffix)]
    public async Task The_job_goes_from_the_complaint_to_a_measured_cause_and_teaches_another_model(string suffix)
    {
        using var bench = Bench(suffix);
        var before = await OnTheOtherModel(bench, suffix);

        var taken = await TakenIn(bench, suffix);
        var job = taken.GetProperty("job").Text("id");
        await WakesUntilPowerIsLost(bench, job, suffix);
        await CheckedInPlaceThenLifted(bench, job, suffix);
        await ThePart(bench, job, suffix);
        await bench.Json("fixed", job, "replace-backup-capacitor", "works", "--tested-before");
        bench.Clock.Advance(TimeSpan.FromHours(40));
        await bench.Json("held", job, "replace-backup-capacitor", "yes", "--after", "soak");
        var closed = await bench.Json("close", job, "--outcome", "mended", "--cause", $"backup-capacitor-shorted{suffix}:measured", "--minutes", "95");

        Assert.Equal(job, closed.Text("because"));
        var taught = closed.All("taught").Single(t => t.Text("device") == $"pellwick-s40{suffix}");
        Assert.Equal($"backup-capacitor-shorted{suffix}", taught.Text("fault"));
        Assert.True(taught.Number("after") > taught.Number("before"), $"taught {taught}");
        var after = await OnTheOtherModel(bench, suffix);
        Assert.True(after.Probability > before.Probability, $"{before} → {after}");
        Assert.True(after.Rank <= before.Rank, $"{before} → {after}");
        Assert.Contains(job, after.Jobs);
    }

    [Fact]
    public async Task With_the_outcome_reversed_the_other_model_moves_the_other_way()
    {
        using var bench = Bench("");
        var before = await OnTheOtherModel(bench, "");
        var job = (await TakenIn(bench, "")).GetProperty("job").Text("id");
        await bench.Json("agree", job, "--may-erase", "yes");
        await bench.Json("reset", job, "controller-reset", "works");
        bench.Clock.Advance(TimeSpan.FromHours(40));
        await bench.Json("held", job, "controller-reset", "yes", "--after", "power-loss");
        await bench.Json("close", job, "--outcome", "mended", "--cause", "settings-corrupted:measured");

        var after = await OnTheOtherModel(bench, "");

        Assert.True(after.Probability < before.Probability, $"{before} → {after}");
    }

    private static TestBench Bench(string suffix)
    {
        var bench = TestBench.Demo("electronic-keyboard");
        if (suffix.Length > 0)
            RenamedIds.Apply(bench);
        return bench;
    }

    private static async Task<JsonElement> TakenIn(TestBench bench, string suffix)
    {
        var taken = await bench.Json("take-in", "--machine", "Corvane K-61", Complaint, "--technician", "Runa", "--worth", "100", "--spend", "40");
        Assert.Equal([$"display{suffix}=blank", $"power-lamp{suffix}=lit", $"sound{suffix}=none"], taken.Seen().Order());
        var reset = taken.Answer().All("resets")[0];
        Assert.Equal($"corvane-k61-reset{suffix}", reset.Text("reset"));
        Assert.Contains(reset.All("steps"), s => s.GetString()!.Contains("lowest C", StringComparison.Ordinal));
        Assert.Contains("registrations", reset.Text("erases"), StringComparison.Ordinal);
        Assert.NotNull(reset.GetProperty("blocked").GetString());
        Assert.Contains(reset.All("cautions"), c => c.Text("hazard") == "data-loss");
        return taken;
    }

    private static async Task WakesUntilPowerIsLost(TestBench bench, string job, string suffix)
    {
        var refused = await bench.Run("reset", job, $"corvane-k61-reset{suffix}", "works");
        Assert.Equal(3, refused.Code);
        Assert.Contains("the owner has not agreed", refused.Error, StringComparison.Ordinal);

        await bench.Json("agree", job, "--may-erase", "yes");
        await bench.Json("reset", job, $"corvane-k61-reset{suffix}", "works");
        var lost = await bench.Json("held", job, $"corvane-k61-reset{suffix}", "no", "--after", "power-loss");

        Assert.Contains(lost.Causes()[0], BackupFaults.Select(f => f + suffix));
        Assert.Contains("only held until power was lost", lost.Answer().All("causes")[0].Text("why"), StringComparison.Ordinal);
        var backup = BackupFaults.Select(f => lost.Probability(f + suffix)).Sum();
        Assert.True(backup > 0.5, $"faults of the back-up supply together {backup:0.00}");
    }

    private static async Task CheckedInPlaceThenLifted(TestBench bench, string job, string suffix)
    {
        var shown = await bench.Json("job", job);
        Assert.Contains(shown.Next().Text("id"), new[] { $"look-for-leakage{suffix}", $"ohms-across-backup{suffix}" });
        await bench.Json("opened", job, "case");
        await bench.Json("tested", job, $"look-for-leakage{suffix}", "no");
        var looked = await bench.Json("opened", job, "main-board");
        Assert.Equal($"ohms-across-backup{suffix}", looked.Next().Text("id"));
        Assert.Contains(looked.Next().All("cautions"), c => c.Text("hazard") == "stored-charge");

        var inPlace = await bench.Json("tested", job, $"ohms-across-backup{suffix}", "flat-low");
        Assert.Equal($"backup-capacitor-shorted{suffix}", inPlace.Causes()[0]);
        Assert.Equal($"ohms-across-backup-lifted{suffix}", inPlace.Next().Text("id"));

        var lifted = await bench.Json("tested", job, $"ohms-across-backup-lifted{suffix}", "flat-low");
        Assert.Equal("replace-backup-capacitor", lifted.Next().Text("id"));
        var part = lifted.Next().GetProperty("part");
        Assert.Equal(["C14", "0.1 F 5.5 V"], [part.Text("designator"), part.Text("rating")]);
        Assert.NotEmpty(part.All("mustMatch"));
        Assert.NotEmpty(part.All("mustNotChange"));
        Assert.True(part.Number("money") > 0 && part.Number("waitDays") > 0, "a part that costs money and waiting");
    }

    private static async Task ThePart(TestBench bench, string job, string suffix)
    {
        var part = $"backup-capacitor{suffix}";
        await bench.Json("part", job, part, "ordered", "--price", "2,4", "--shipping", "5.9", "--lead-days", "4", "--from", "the corner shop");
        var waits = await bench.Json("wait", job, "part", "--until", "2026-11-07");
        Assert.Equal("part", waits.GetProperty("job").GetProperty("waitsFor").Text("for"));
        bench.Clock.Advance(TimeSpan.FromDays(4));
        await bench.Json("part", job, part, "arrived", "--date-code", "2631");
        await bench.Json("wait", job, "bench");
        var tested = await bench.Json("part", job, part, "tested-good");
        var ordered = tested.GetProperty("job").All("log").First(e => e.Text("type") == "part");
        Assert.Equal(2.4, ordered.Number("price"));
    }

    /// <summary>The same complaint on a model with the same role, on which no job was closed with that cause.</summary>
    private static async Task<Ranked> OnTheOtherModel(TestBench bench, string suffix)
    {
        var asked = await bench.Json("ask", Complaint, "--machine", "Pellwick S-40");
        var fault = $"backup-capacitor-shorted{suffix}";
        return new(Array.IndexOf(asked.Causes(), fault), asked.Probability(fault), string.Join(' ', asked.Cause(fault).All("jobs").Select(j => j.Text("job"))));
    }

    private sealed record Ranked(int Rank, double Probability, string Jobs);
}
