using System.Collections.Immutable;
using Triage.Reasoning.Learning;
using Xunit;

namespace Triage.Reasoning.Tests.Learning;

/// <summary>
/// A workshop of one device class where a supply fault shows dark lamp and no sound together or not at all, half and half, while a regulator
/// fault shows each in half of the machines, independently: alone the findings say nothing, together everything.
/// </summary>
public class DependenceTests
{
    static readonly ImmutableArray<string> Levels = ["deck"];
    static readonly CheckedFinding Dark = new("lamp", "dark"), Silent = new("sound", "none"), Lit = new("lamp", "lit"), Hum = new("hum", "yes");

    static readonly Knowledge Notes = new()
    {
        Faults = [Fault("supply"), Fault("regulator")],
        Findings =
        [
            new("lamp", ["lit", "dark"], true, [0.5, 0.5], 2),
            new("sound", ["clear", "none"], true, [0.5, 0.5], 2),
            new("hum", ["no", "yes"], true, [0.5, 0.5], 2),
        ],
    };

    [Fact]
    public void FindingsThatComeTogether_AreFoundOut()
    {
        Learned learned = Learn(Coupled(1, 400));

        var dependent = learned.Dependent(Levels)!;
        // from the definition: P(dark and silent | cause) is ½ for the supply, ¼ for the regulator
        Assert.Equal(0.5, Math.Exp(dependent.LogLikelihood("supply", [Dark, Silent])), 0.05);
        Assert.Equal(0.25, Math.Exp(dependent.LogLikelihood("regulator", [Dark, Silent])), 0.05);
        Assert.InRange(Math.Exp(dependent.LogLikelihood("supply", [Lit, Silent])), 0, 0.02);
        ComeTogether pair = Assert.Single(dependent.Together("supply", [Dark, Silent, Hum]).Where(t => t.First == Dark));
        Assert.Equal(Silent, pair.Second);
        Assert.Empty(dependent.Together("regulator", [Dark, Silent, Hum]));
    }

    [Fact]
    public void LogLikelihood_IsTheMeanOverParents_CountedFromTheJobsThemselves()
    {
        JobRecord[] jobs = [.. Coupled(2, 400)];
        Learned learned = Learn(jobs);
        var dependent = learned.Dependent(Levels)!;
        double[] At(CheckedFinding seen) => [.. learned.Seen("supply", seen.Finding, Levels)!.Mean];
        ImmutableArray<string> Values(CheckedFinding seen) => Notes.Findings.Single(f => f.Id == seen.Finding).Values;
        double Alone(CheckedFinding seen) => At(seen)[Values(seen).IndexOf(seen.Value)];
        double Beside(CheckedFinding parent, CheckedFinding child)
        {
            double kappa = dependent.Strength.Kappa;
            var all = jobs.Where(job => job.Causes[0].Fault == "supply" && job.Checked.Any(c => c.Finding == child.Finding)).ToArray();
            var both = all.Where(job => job.Checked.Contains(parent)).ToArray();
            // what the pair changes, times what is usual
            double[] lifted = [.. At(child).Zip(Values(child), (p, value) =>
            {
                double usual = (all.Count(job => job.Checked.Contains(child with { Value = value })) + kappa * p) / (all.Length + kappa);
                return p * (both.Count(job => job.Checked.Contains(child with { Value = value })) / usual + kappa);
            })];
            return lifted[Values(child).IndexOf(child.Value)] / lifted.Sum();
        }

        CheckedFinding[] seen = [Dark, Silent, Hum];
        double expected = dependent.Strength.Parents.Average(p => seen.Single(s => s.Finding == p) is var parent
            ? seen.Aggregate(1.0, (product, s) => product * (s == parent ? Alone(s) : Beside(parent, s))) : 0);

        Assert.Equal(Math.Log(expected), dependent.LogLikelihood("supply", seen), 1e-9);
        Assert.Equal(Math.Log(Alone(Dark)), dependent.LogLikelihood("supply", [Dark]), 1e-12);
    }

    [Fact]
    public void UnlinkedToThePast_FindingsStayIndependent()
    {
        Assert.Null(Learn(Coupled(3, 25)).Dependent(Levels));
        Assert.All(Enumerable.Range(0, 10), seed => Assert.Null(Learn(Jobs(seed, 400, (_, random) => (random.Next(2) == 0, random.Next(2) == 0))).Dependent(Levels)));
    }

    [Fact]
    public void ClosingEditingAndTakingOut_EqualsCountingWhatIsLeft()
    {
        JobRecord[] jobs = [.. Coupled(4, 300)], edits = [.. Coupled(5, 300)];
        Learned moved = Learn(jobs);
        var left = jobs.ToDictionary(job => job.Id);
        for (int i = 0; i < 200; i += 2)
        {
            moved = moved.Without(jobs[i]);
            left.Remove(jobs[i].Id);
            if (i % 4 == 0) continue;
            moved = moved.With(edits[i]);
            left.Add(edits[i].Id, edits[i]);
        }

        Learned batch = moved.Recount(left.Values);
        foreach (string fault in (string[])["supply", "regulator"])
            foreach (CheckedFinding[] seen in (CheckedFinding[][])[[Dark, Silent], [Lit, Silent, Hum], [Hum]])
                Assert.Equal(batch.Dependent(Levels)!.LogLikelihood(fault, seen), moved.Dependent(Levels)!.LogLikelihood(fault, seen));
    }

    static KnownFault Fault(string id) => new(id, null, 1, 2)
    {
        Shows = [.. ((string[])["lamp", "sound", "hum"]).Select(finding => new KnownLink(finding, [0.5, 0.5], 2))],
    };

    static Learned Learn(params IEnumerable<JobRecord> jobs) => Learner.Learn(Notes, jobs, LearnerSettings.Default);

    static IEnumerable<JobRecord> Coupled(int seed, int count) => Jobs(seed, count, (supply, random) =>
    {
        bool dark = random.Next(2) == 0;
        return (dark, supply ? dark : random.Next(2) == 0);
    });

    static IEnumerable<JobRecord> Jobs(int seed, int count, Func<bool, Random, (bool Dark, bool Silent)> shows)
    {
        var random = new Random(seed);
        return [.. Enumerable.Range(0, count).Select(i => Job(i, random, shows))];
    }

    static JobRecord Job(int i, Random random, Func<bool, Random, (bool Dark, bool Silent)> shows)
    {
        bool supply = random.Next(2) == 0;
        var (dark, silent) = shows(supply, random);
        return new()
        {
            Id = $"{i}",
            Closed = DateTimeOffset.UnixEpoch.AddHours(i),
            Levels = Levels,
            Causes = [new(supply ? "supply" : "regulator")],
            Weight = 1,
            Checked = [dark ? Dark : Lit, silent ? Silent : new("sound", "clear"), random.Next(2) == 0 ? Hum : new("hum", "no")],
        };
    }
}
