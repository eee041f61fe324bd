using FsCheck.Xunit;
using Triage.Reasoning.Learning;
using Xunit;
using static Triage.Reasoning.Tests.Learning.SmallBench;

namespace Triage.Reasoning.Tests.Learning;

/// <summary>Closing, editing and taking out jobs equals relearning under the same epoch, bit for bit: all numbers come from integer sums.</summary>
[Trait("run", "long")]
public class RelearningTests
{
    [Property(MaxTest = 40)]
    public void AnyOrderOfClosing_GivesTheSameNumbers(int seed)
    {
        JobRecord[] jobs = [.. RandomScoped(seed, 40)];
        Learned learned = Learner.Learn(Scoped, jobs, LearnerSettings.Default);
        new Random(seed).Shuffle(jobs);

        Assert.Equal(learned.Everything(), Learner.Learn(Scoped, jobs, LearnerSettings.Default).Everything());
        Assert.Equal(learned.Everything(), jobs.Aggregate(learned.Recount([]), (l, job) => l.With(job)).Everything());
    }

    [Property(MaxTest = 40)]
    public void EditingAndDeleting_EqualsCountingWhatIsLeft(int seed)
    {
        var random = new Random(seed);
        JobRecord[] jobs = [.. RandomScoped(seed, 40)], edits = [.. RandomScoped(seed + 1, 40)];
        Learned learned = Learner.Learn(Scoped, jobs, LearnerSettings.Default);
        Learned moved = learned;
        var left = jobs.ToDictionary(job => job.Id);
        foreach (JobRecord edit in edits)
        {
            int what = random.Next(3);
            if (what == 0) continue;
            moved = moved.Without(left[edit.Id]);
            left.Remove(edit.Id);
            if (what == 1) continue;
            moved = moved.With(edit);
            left.Add(edit.Id, edit);
        }

        Assert.Equal(learned.Recount(left.Values).Everything(), moved.Everything());
        Assert.Equal(Learner.Learn(Scoped, left.Values, LearnerSettings.Default).Everything(), moved.Refit().Everything());
    }

    [Property(MaxTest = 10)]
    public void Shares_OnMachinesOfAllSorts_AreThoseOfAnIndependentBatchLearner(int seed)
    {
        JobRecord[] jobs = [.. RandomScoped(seed, 40).Select(job => job with { Causes = job.Causes.Sum(c => c.Chance) > 1 ? job.Causes[..1] : job.Causes })];
        Learned learned = Learner.Learn(Scoped, jobs, LearnerSettings.Default);
        var batch = new BatchLearner(Scoped, jobs, learned.Epoch.Pooling);

        foreach (var levels in (System.Collections.Immutable.ImmutableArray<string>[])[OwnDevice, OtherDevice, ["deck"], None])
            foreach (KnownFault fault in Notes.Faults)
                Assert.Equal(batch.Share(fault.Id, levels), learned.Share(fault.Id, levels).Mean, 1e-10);
    }

    [Property(MaxTest = 40)]
    public void Numbers_AreThoseOfAnIndependentBatchLearner(int seed)
    {
        JobRecord[] jobs = [.. Random(seed, 40).Select(job => job with { Causes = job.Causes.Sum(c => c.Chance) > 1 ? job.Causes[..1] : job.Causes })];
        Learned learned = Learner.Learn(Notes, jobs, LearnerSettings.Default);
        var batch = new BatchLearner(Notes, jobs, learned.Epoch.Pooling);

        foreach (var levels in (System.Collections.Immutable.ImmutableArray<string>[])[OwnDevice, OtherDevice, ["deck"], None])
            foreach (KnownFault fault in Notes.Faults)
            {
                Assert.Equal(batch.Share(fault.Id, levels), learned.Share(fault.Id, levels).Mean, 1e-12);
                foreach (KnownFinding finding in Notes.Findings)
                    AssertSame(batch.Link(fault, finding, levels), learned.Link(fault.Id, finding.Id, levels));
            }
    }

    [Fact]
    public void ClosingOneByOneAndRefittingWhenDue_EqualsLearningAllAtOnce()
    {
        JobRecord[] canonical = [.. Random(7, 60).OrderBy(job => job.Closed).ThenBy(job => job.Id, StringComparer.Ordinal)];
        Learned grown = Learner.Learn(Notes, [], LearnerSettings.Default);
        foreach (JobRecord job in canonical)
        {
            grown = grown.With(job);
            if (grown.RefitDue) grown = grown.Refit();
        }

        Assert.Equal(55, grown.Epoch.FittedTo);
        Assert.Equal(Learner.Learn(Notes, canonical, LearnerSettings.Default).Everything(), grown.Everything());
    }

    [Fact]
    public void Epochs_StandAtCeilingsOfPowersOfOnePointOne()
    {
        // 1.1^24 … 1.1^27 = 9.85, 10.83, 11.92, 13.11
        Assert.Equal([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 12, 14], Enumerable.Range(0, 15).Select(Epoch.Due));
    }

    [Fact]
    public void JobsThatCannotBe_AreNamed()
    {
        JobRecord job = Job("J-7", "fuse-open");

        AssertRefused("Job 'J-7' has the weight 1.2; give one of 0 … 1.", () => Learn(job with { Weight = 1.2 }));
        AssertRefused("Two jobs are called 'J-7'; ids must differ.", () => Learn(job, job));
        AssertRefused("Job 'J-7' is counted already; take it out first.", () => Learn(job).With(job));
        AssertRefused("Job 'J-7' is not among those counted.", () => Learn().Without(job));
        AssertRefused("Job 'J-7' is of a machine of the scope 'attic', which the notes do not have; add it to them or leave it out.", () => Learn(job with { Scope = "attic" }));
        AssertRefused("Job 'J-7' names the finding 'lamp' twice; keep one.", () => Learn(job with { Checked = [new("lamp", "lit"), new("lamp", "dark")] }));
    }

    [Fact]
    public void AValueThatNoNoteKnows_IsListedNotLost()
    {
        Learned learned = Learn(Job("J-7", "fuse-open", ("lamp", "purple")));

        Assert.Equal([new NotCounted("J-7", "lamp", "purple")], learned.NotCounted);
        Assert.Equal(1, learned.JobsCounted);
    }

    static void AssertRefused(string message, Action action) => Assert.Equal(message, Assert.Throws<ArgumentException>(action).Message);

    static void AssertSame(double[]? expected, Distribution? actual)
    {
        Assert.Equal(expected is null, actual is null);
        for (int i = 0; i < (expected?.Length ?? 0); i++) Assert.Equal(expected![i], actual!.Mean[i], 1e-12);
    }
}
