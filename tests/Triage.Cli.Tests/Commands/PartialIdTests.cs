namespace Triage.Cli.Tests.Commands;

/// <summary>Ids typed in part.</summary>
public sealed class PartialIdTests(PartialIdTests.OneBench shared) : IClassFixture<PartialIdTests.OneBench>
{
    private readonly TestBench bench = shared.Bench;

    [Theory]
    [InlineData("2026-023")]
    [InlineData("023")]
    [InlineData("23")]
    public async Task A_number_is_that_of_the_open_job(string typed)
    {
        Assert.Equal("2026-023", (await bench.Json("job", typed)).GetProperty("job").Text("id"));
    }

    [Fact]
    public async Task The_general_reset_means_the_exact_keys_of_the_model()
    {
        var taken = await bench.Json("take-in", "--machine", "Pellwick S-40", "nothing on the display", "--may-erase", "yes");

        var tried = await bench.Json("reset", taken.GetProperty("job").Text("id"), "controller", "no-change");

        Assert.Equal("pellwick-s40-reset", tried.GetProperty("job").All("log")[^1].Text("reset"));
    }

    [Theory]
    [InlineData("reset")]
    [InlineData("om54")]
    [InlineData("controller-reset")]
    [InlineData("controller")]
    public async Task What_held_is_looked_for_among_what_the_job_tried(string typed)
    {
        var held = await bench.Json("held", "2026-021", typed, "yes", "--after", "days");

        Assert.Equal("ostrelle-om54-reset", held.GetProperty("job").All("log")[^1].Text("action"));
    }

    [Fact]
    public async Task What_was_never_tried_cannot_have_held()
    {
        var said = await bench.Run("held", "2026-023", "controller-reset", "no");

        Assert.Equal((3, "Job 2026-023 tried no reset and no fix yet. Record it first with triage reset or triage fixed."), (said.Code, said.Error));
    }

    [Fact]
    public async Task A_fix_is_looked_for_among_those_of_the_machine()
    {
        var mended = await bench.Json("fixed", "2026-021", "replace-backup-cap", "no-change");

        Assert.Equal("replace-backup-capacitor", mended.GetProperty("job").All("log")[^1].Text("fix"));
    }

    public sealed class OneBench : IDisposable
    {
        internal TestBench Bench { get; } = TestBench.Demo("electronic-keyboard", "portable-computer");

        public void Dispose() => Bench.Dispose();
    }
}
