using Triage.Notes.Kinds;
using Triage.Workshop.Knowledge;
using Triage.Workshop.Model;
using Xunit;

namespace Triage.Workshop.Tests.Store;

/// <summary>The program fails at one note: that one is named, and no other feels it.</summary>
public sealed class MishapsTests
{
    [Fact]
    public async Task JobThatCannotBeCounted_IsNamed_AndAllOthersCount()
    {
        await using var bench = DemoBench.OpenSmall(classes: ["cassette-deck"]);
        var (notes, mishaps) = (bench.Live.Current.Notes, new Mishaps());
        var closed = notes.Jobs.First(j => j.Id == "2024-002");
        var counted = CountedJobs.Of(notes, _ => 1, mishaps);

        // no reader makes such a job: the array that nobody filled makes whatever goes through it fail
        var broken = notes.With(closed with { Log = default });
        var recounted = counted.Recounted([closed.Id], broken, _ => 1, mishaps);
        var anew = CountedJobs.Of(broken, _ => 1, mishaps);

        Assert.Equal(counted.Records.Count - 1, recounted.Records.Count);
        Assert.Equal(counted.Records.Count - 1, anew.Records.Count);
        Assert.StartsWith("jobs/2024/2024-002.md:0:0: The program failed while counting this job (", Assert.Single(mishaps.All).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task JobThatCannotBeAnswered_IsSaidSo_AndTheCheckNamesIt_UntilItsFileChanges()
    {
        await using var bench = DemoBench.OpenSmall(classes: ["cassette-deck"]);
        var now = bench.Live.Current;
        var job = now.Notes.Jobs.First(j => j.Id == "2024-002");

        var asked = now.AnswerFor(job with { Log = default });

        Assert.Null(asked.Answer);
        Assert.StartsWith("No answer could be worked out. The program failed while working out the answer (", asked.Refused!.What, StringComparison.Ordinal);
        Assert.NotNull(now.AnswerFor(job).Answer);
        Assert.Contains(now.Problems, p => p.Path == job.Place.Path && p.Severity == Notes.Severity.Error);
        Assert.Equal(job.Place.Path, Assert.Single(bench.Live.Current.Mishaps).Path);

        var file = Path.Combine(bench.Folder, "demo", job.Place.Path);
        File.AppendAllText(file, "\nLooked at.\n");
        bench.Live.Rescan();
        Assert.Empty(bench.Live.Current.Mishaps);
    }

    [Fact]
    public async Task WatchedBench_SaysThatItWatches_AnUnwatchedOneNothing()
    {
        using var book = new SmallBook();
        await using var watched = book.Open(watch: true);
        await using var single = book.Open();

        Assert.True(watched.Watching);
        Assert.Null(single.Watching);
    }

    [Fact]
    public async Task ListenerThatFails_StopsNoWatching()
    {
        using var book = new SmallBook();
        await using var live = book.Open(watch: true);
        var fails = true;
        live.Changed += _ =>
        {
            if (fails)
                throw new InvalidOperationException("a listener's own fault");
        };

        book.Write("jobs/2026/2026-002.md", SmallBook.OpenJob.Replace(SmallBook.JobId, "2026-002", StringComparison.Ordinal));
        await Eventually.Is(live, b => b.Mishaps.Any(m => m.What.Contains("a listener's own fault", StringComparison.Ordinal)));
        fails = false;
        book.Write("jobs/2026/2026-003.md", SmallBook.OpenJob.Replace(SmallBook.JobId, "2026-003", StringComparison.Ordinal));

        await Eventually.Is(live, b => b.Notes.Find<Job>("2026-002") is not null && b.Notes.Find<Job>("2026-003") is not null);
        Assert.True(live.Watching);
    }
}
