using System.Collections.Immutable;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;
using Triage.Reasoning.Planning;

namespace Triage.Reasoning.Tests.Planning;

/// <summary>
/// The definition, spelled out slowly: every history of options and outcomes as a tree, beliefs rebuilt by enumeration, nothing
/// remembered. Works on the problem itself, so that it shares no arithmetic with the planner.
/// </summary>
internal static class Oracle
{
    /// <summary>Least expected cost over every policy.</summary>
    public static double Optimum(RepairProblem problem) => Ready(problem).Min(o => Price(problem, o) + Cost(problem, o, Optimum));

    /// <summary>Expected cost of doing what the planner says until the job is over, asking it anew in every state.</summary>
    public static double Followed(RepairProblem problem, PlannerBudget budget)
    {
        var best = NextStep.Choose(problem, budget).Best.Option;
        return Price(problem, best) + Cost(problem, best, next => Followed(next, budget));
    }

    public static IEnumerable<Option> Ready(RepairProblem problem) => problem.Options
        .Where(o => o.Blocked is null && !problem.Done.Contains(o.Id) && o.After.All(problem.Done.Contains));

    public static double Price(RepairProblem problem, Option option) => option.Price(problem.Rates)
        + problem.Access.PathTo(option.Access).Where(s => !problem.Open.Contains(s.Id)).Sum(s => s.Minutes * problem.Rates.ValueOfHour / 60);

    public static IEnumerable<(string Name, double Probability, RepairProblem Next)> Outcomes(RepairProblem problem, Option option) => option switch
    {
        TestOption test => test.Reveals.Values.Select((name, value) => Branch(problem, option, name,
            problem.Belief.Select(h => h with { Probability = h.Probability * Shows(test.Reveals, h)[value] }))),
        RoundOption round => Together([.. round.Reveals.Where(f => !Known(problem, problem.Done).Contains(f.Id))]).Select(seen => Branch(problem, option, string.Join(", ", seen.Select(s => $"{s.Finding.Id} {s.Value}")),
            problem.Belief.Select(h => h with { Probability = seen.Aggregate(h.Probability, (p, s) => p * Shows(s.Finding, h)[s.Value]) }))),
        FixOption fix => [Branch(problem, option, "still faulty", problem.Belief.SelectMany(h => Remains(fix, h)))],
        _ => [],
    };

    private static double Cost(RepairProblem problem, Option option, Func<RepairProblem, double> after) =>
        Outcomes(problem, option).Where(o => o.Probability > 1e-300).Sum(o => o.Probability * after(o.Next));

    private static (string, double, RepairProblem) Branch(RepairProblem problem, Option option, string name, IEnumerable<Hypothesis> weighed)
    {
        var left = weighed.Where(h => h.Probability > 0).ToList();
        var sum = left.Sum(h => h.Probability);
        return (name, sum, problem with
        {
            Belief = [.. left.Select(h => h with { Probability = h.Probability / sum })],
            Done = WithNothingLeftToShow(problem, problem.Done.Add(option.Id)),
            Open = [.. problem.Open.Union(problem.Access.PathTo(option.Access).Select(s => s.Id))],
        });
    }

    /// <summary>Every combination of values of some findings.</summary>
    private static IEnumerable<(Finding Finding, int Value)[]> Together(Finding[] findings) => findings.Aggregate(
        Enumerable.Repeat(Array.Empty<(Finding, int)>(), 1), (seen, finding) => seen.SelectMany(s => finding.Values.Select((_, value) => s.Append((finding, value)).ToArray())));

    private static HashSet<string> Known(RepairProblem problem, IEnumerable<string> done) =>
        [.. problem.Options.Where(o => done.Contains(o.Id)).SelectMany(Revealed).Select(f => f.Id)];

    /// <summary>What is done, and every test and round that could only show again what was seen.</summary>
    private static ImmutableArray<string> WithNothingLeftToShow(RepairProblem problem, ImmutableArray<string> done)
    {
        var known = Known(problem, done);
        return [.. done.Union(problem.Options.Where(o => Revealed(o) is { Length: > 0 } shows && shows.All(f => known.Contains(f.Id))).Select(o => o.Id))];
    }

    private static Finding[] Revealed(Option option) => option switch
    {
        TestOption test => [test.Reveals],
        RoundOption round => [.. round.Reveals],
        _ => [],
    };

    /// <summary>What a failed fix leaves of one hypothesis: every way in which some of its faults go, or turn into what they leave, but none left.</summary>
    private static IEnumerable<Hypothesis> Remains(FixOption fix, Hypothesis before)
    {
        for (var mask = 0; mask < 1 << before.Faulty.Length; mask++)
        {
            var chance = before.Probability;
            var left = new List<FaultyRoot>();
            for (var i = 0; i < before.Faulty.Length; i++)
            {
                var clearing = fix.Clears.FirstOrDefault(c => c.Root == before.Faulty[i].Root && c.State == before.Faulty[i].State);
                var cleared = clearing is null ? 0 : clearing.Works * clearing.Holds;
                chance *= (mask >> i & 1) == 1 ? 1 - cleared : cleared;
                if ((mask >> i & 1) == 1)
                {
                    left.Add(before.Faulty[i]);
                }
                else if (clearing?.Leaves > 0)
                {
                    left.Add(new FaultyRoot(clearing.Root, clearing.Leaves));
                }
            }

            if (left.Count > 0)
            {
                yield return new Hypothesis(chance, [.. left]);
            }
        }
    }

    /// <summary>Distribution of the value shown: the largest of independent draws, or the mean of those present.</summary>
    private static double[] Shows(Finding finding, Hypothesis hypothesis)
    {
        var present = finding.Links.Where(l => hypothesis.Faulty.Contains(new FaultyRoot(l.Root, l.State))).Select(l => l.Produces).ToList();
        if (finding.Nominal)
        {
            return present.Count == 0 ? [.. finding.Ambient] : [.. finding.Values.Select((_, v) => present.Average(p => p[v]))];
        }

        double[] shown = [.. finding.Ambient];
        foreach (var draw in present)
        {
            var larger = new double[shown.Length];
            for (var a = 0; a < shown.Length; a++)
            {
                for (var b = 0; b < shown.Length; b++)
                {
                    larger[Math.Max(a, b)] += shown[a] * draw[b];
                }
            }

            shown = larger;
        }

        return shown;
    }
}
