using System.Collections.Immutable;
using Triage.Reasoning.Learning;
using Xunit;

namespace Triage.Reasoning.Tests.Learning;

/// <summary>A workshop simulated from known numbers: noisy-OR findings with leak, one or two causes a job, each finding checked in half of the jobs.</summary>
public class RecoveryTests
{
    static readonly double[] TrueShares = [0.5, 0.3, 0.2];
    static readonly double[] TrueLeaks = [0.02, 0.1, 0.05, 0.2];

    /// <summary>P(fault produces finding); null when not linked.</summary>
    static readonly double?[][] TrueLinks = [[0.9, 0.4, null, 0.3], [null, 0.7, 0.95, null], [0.2, null, 0.5, 0.8]];

    [Fact]
    public void KnownNumbers_AreRecoveredFromFourThousandJobs()
    {
        Learned learned = Learner.Learn(Vague, Jobs(20251123, 4000), LearnerSettings.Default);

        for (int r = 0; r < 3; r++)
        {
            Assert.Equal(TrueShares[r], learned.Share($"r{r}", Levels).Mean, 0.04);
            for (int f = 0; f < 4; f++)
                if (TrueLinks[r][f] is { } link) Assert.Equal(link, learned.Link($"r{r}", $"f{f}", Levels)!.Mean[1], 0.06);
        }
        for (int f = 0; f < 4; f++) Assert.Equal(TrueLeaks[f], learned.Ambient($"f{f}").Mean[1], 0.05);
    }

    [Fact]
    public void SharingCredit_BeatsFullCredit_WhenManyJobsHaveTwoCauses()
    {
        JobRecord[] jobs = [.. Jobs(3, 3000, doubles: 0.6)];
        // full credit for each: every cause of a job as if it had been alone
        JobRecord[] apart = [.. jobs.SelectMany(job => job.Causes.Select((cause, i) => job with { Id = $"{job.Id}-{i}", Causes = [cause] }))];

        Assert.True(LinkError(jobs) < LinkError(apart) / 2, $"{LinkError(jobs)} against {LinkError(apart)}");
    }

    static double LinkError(IEnumerable<JobRecord> jobs)
    {
        Learned learned = Learner.Learn(Vague, jobs, LearnerSettings.Default);
        return (from r in Enumerable.Range(0, 3)
                from f in Enumerable.Range(0, 4)
                where TrueLinks[r][f] is not null
                select Math.Abs(TrueLinks[r][f]!.Value - learned.Link($"r{r}", $"f{f}", Levels)!.Mean[1])).Average();
    }

    static readonly ImmutableArray<string> Levels = ["device", "class"];

    static Knowledge Vague => new()
    {
        Faults = [.. TrueLinks.Select((links, r) => new KnownFault($"r{r}", null, 1, 2)
        {
            Shows = [.. links.Select((link, f) => (link, f)).Where(item => item.link is not null).Select(item => new KnownLink($"f{item.f}", [0.5, 0.5], 2))],
        })],
        Findings = [.. TrueLeaks.Select((_, f) => new KnownFinding($"f{f}", ["no", "yes"], false, [0.9, 0.1], 2))],
    };

    static IEnumerable<JobRecord> Jobs(int seed, int count, double doubles = 0.05)
    {
        var random = new Random(seed);
        return [.. Enumerable.Range(0, count).Select(i => Job(random, i, doubles))];
    }

    static JobRecord Job(Random random, int id, double doubles)
    {
        var causes = new HashSet<int> { Draw(random) };
        while (random.NextDouble() < doubles && causes.Count < 2) causes.Add(Draw(random));
        var seen = from f in Enumerable.Range(0, 4).ToArray()
                   where random.Next(2) == 0
                   let normal = causes.Aggregate(1 - TrueLeaks[f], (p, r) => p * (1 - (TrueLinks[r][f] ?? 0)))
                   select new CheckedFinding($"f{f}", random.NextDouble() < normal ? "no" : "yes");
        return new()
        {
            Id = $"{id}",
            Closed = DateTimeOffset.UnixEpoch.AddHours(id),
            Levels = Levels,
            Causes = [.. causes.Select(r => new JobCause($"r{r}"))],
            Weight = 1,
            Checked = [.. seen],
        };
    }

    static int Draw(Random random)
    {
        double u = random.NextDouble();
        return u < TrueShares[0] ? 0 : u < TrueShares[0] + TrueShares[1] ? 1 : 2;
    }
}
