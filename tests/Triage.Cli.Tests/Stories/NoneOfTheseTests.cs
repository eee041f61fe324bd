namespace Triage.Cli.Tests.Stories;

/// <summary>What was seen fits no listed cause: that is said, and the cause found becomes a listed one.</summary>
public sealed class NoneOfTheseTests : IDisposable
{
    private const string Complaint = "hisses and hums, a note hangs, smells burnt";

    private readonly TestBench bench = TestBench.Demo();

    public void Dispose() => bench.Dispose();

    [Fact]
    public async Task The_unlisted_fault_leads_and_the_cause_found_is_ranked_from_then_on()
    {
        var taken = await bench.Json("take-in", "--machine", "Corvane K-61", Complaint);
        Assert.Contains("burnt-smell=yes", taken.Seen());
        Assert.Contains("stuck-note=yes", taken.Seen());
        Assert.Equal("unlisted", taken.Causes()[0]);
        Assert.Contains(taken.Answer().All("remarks"), r => r.GetString()!.StartsWith("No listed cause explains this well.", StringComparison.Ordinal));

        var job = taken.GetProperty("job").Text("id");
        var closed = await bench.Json("close", job, "--outcome", "mended", "--new-cause", "Tin strap rubbed through to the key matrix", "--grade", "measured", "--minutes", "80");

        var cause = closed.GetProperty("job").All("causes").Single();
        Assert.True(cause.GetProperty("wasNew").GetBoolean());
        var fault = cause.Text("fault");
        var taught = closed.All("taught").Single(t => t.Text("device") == "corvane-k61");
        Assert.Equal((fault, 0.0), (taught.Text("fault"), taught.Number("before")));
        var again = await bench.Json("ask", "--machine", "Corvane K-61", Complaint);
        Assert.Equal(fault, again.Causes().First(c => c is not "unlisted"));
        // a job with a new cause also makes the next new cause likelier: this one need not be beaten
        Assert.True(again.Probability(fault) > again.Causes().Where(c => c != fault && c != "unlisted").Max(c => again.Probability(c)));
        Assert.Equal("Tin strap rubbed through to the key matrix", (await bench.Json("note", fault)).Text("name"));
    }

    [Fact]
    public async Task It_is_printed_before_the_causes()
    {
        var said = await bench.Run("ask", "--machine", "Corvane K-61", Complaint);

        var remark = Array.FindIndex(said.Lines, l => l.Contains("No listed cause explains this well.", StringComparison.Ordinal));
        var first = Array.FindIndex(said.Lines, l => l.Contains("None of these: a fault no note describes yet", StringComparison.Ordinal));
        Assert.True(remark > 0 && first > remark, said.Output);
    }
}
