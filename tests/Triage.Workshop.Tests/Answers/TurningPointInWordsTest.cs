using Triage.Notes.Kinds;
using Triage.Workshop.Answers;
using Xunit;

namespace Triage.Workshop.Tests.Answers;

/// <summary>What would have to be true for the runner-up to be better is said on every open demo job that has one.</summary>
public sealed class TurningPointInWordsTest
{
    [Fact]
    public async Task Open_demo_jobs_say_what_would_make_the_runner_up_better()
    {
        await using var bench = DemoBench.Open();
        var answering = new Answering(bench.Live.Current.Knows);
        var steps = bench.Live.Current.Notes.Jobs.Where(j => j.Outcome is null && j.Log.OfType<Saw>().Any())
            .Select(j => answering.For(j).Answer?.Next).OfType<NextBestStep>().Where(n => n.Others.Length > 0).ToList();
        var said = steps.Where(n => n.Turning is not null).ToList();
        Assert.InRange(said.Count, (steps.Count / 2) + 1, steps.Count);
        Assert.All(said, n => Assert.StartsWith($"“{n.Others[0].Name}” would be better first if ", n.Turning, StringComparison.Ordinal));
        Assert.All(said, n => Assert.DoesNotContain("less than 0 ", n.Turning, StringComparison.Ordinal));
        Assert.All(said, n => Assert.Contains("(now ", n.Turning, StringComparison.Ordinal));
    }
}
