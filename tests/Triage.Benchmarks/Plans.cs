using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;
using Triage.Reasoning.Planning;
using Triage.Reasoning.Tests.Planning;

namespace Triage.Benchmarks;

/// <summary>How near the planner comes to the optimum without the exact programme, beside simpler policies: twelve faults, fifteen actions.</summary>
internal static class Plans
{
    /// <summary>As much thought as an answer of the product gets.</summary>
    public static PlannerBudget Searched { get; } = new(2_000_000) { Exact = false };

    private static PlannerBudget OneStep { get; } = new(1) { Exact = false };

    private static readonly (string Name, Func<RepairProblem, double> Cost)[] Policies =
    [
        ("best-first search", p => Oracle.Followed(p, Searched)),
        ("one-step look-ahead alone", p => Oracle.Followed(p, OneStep)),
        ("p/c with the best stop", p => SimplePolicies.Followed(p, SimplePolicies.ProbabilityOverPrice)),
        ("information first", p => SimplePolicies.Followed(p, SimplePolicies.InformationFirst)),
    ];

    /// <summary>Milliseconds of one answer at 500 roots, 300 findings and 2,000 hypotheses, with a usual stop and with a very dear one.</summary>
    public static void Speed(TextWriter to)
    {
        foreach (var (nodes, stop) in new[] { (1, 80.0), (1, 1e5), (500_000, 80.0), (500_000, 1e5) })
        {
            RepairProblem[] problems = [.. Enumerable.Range(0, 10).Select(seed => Large(seed, stop))];
            var ms = Measure.Each(problems, p => NextStep.Choose(p, new(nodes)), best: 2);
            var waited = Measure.Waited(problems, p => NextStep.Choose(p, new(nodes)), best: 2);
            to.WriteLine(FormattableString.Invariant(
                $"next step, stop at {stop}, {nodes} nodes: p50 {Measure.Quantile(ms, 0.5):F1} p99 {Measure.Quantile(ms, 0.99):F1} ms, on the clock {Measure.Quantile(waited, 0.5):F1} and {Measure.Quantile(waited, 0.99):F1}"));
        }
    }

    /// <summary>The same with rounds of three to eight of the findings that the tests reveal one by one.</summary>
    public static RepairProblem WithRounds(RepairProblem problem, int rounds)
    {
        var random = new Random(rounds);
        Finding[] findings = [.. problem.Options.OfType<TestOption>().Select(t => t.Reveals)];
        return problem with
        {
            Options = [.. problem.Options, .. Enumerable.Range(0, rounds).Select(n =>
                new RoundOption($"round {n}", new(random.Next(3, 20)), [.. random.GetItems(findings, random.Next(3, 9)).DistinctBy(f => f.Id)]))],
        };
    }

    public static RepairProblem Large(int seed, double stop)
    {
        var (network, evidence) = Case.Large(seed);
        var random = new Random(seed);
        var seen = evidence.Observations.Select(o => o.Finding).ToHashSet();
        var listed = Hypotheses.Of(network, evidence).Listed;
        var total = listed.Sum(h => h.Probability);
        return new()
        {
            Belief = [.. listed.Select(h => h with { Probability = h.Probability / total })],
            Options =
            [
                new StopOption("stop", new(0, stop)),
                .. network.Findings.Select((f, i) => (f, i)).Where(f => !seen.Contains(f.i)).Select(f => new TestOption($"test {f.i}", new(random.Next(1, 20)), f.f)),
                .. network.Roots.Select((root, r) => new FixOption($"fix {r}", new(random.Next(10, 60), random.Next(0, 20)), [.. Enumerable.Range(1, root.Prior.Length - 1).Select(s => new Clearing(r, s, 0.9))])),
            ],
            Rates = new(12, 0.5),
        };
    }

    public static void Print(TextWriter to, int from, int count)
    {
        var ratios = new List<double[]>();
        foreach (var seed in Enumerable.Range(from, count))
        {
            var problem = TwelveFaults.From(seed);
            var oracle = new BoundedOracle(problem);
            double[] costs = [.. Policies.Select(p => p.Cost(problem))];
            var optimum = oracle.Optimum(atMost: costs[0] * (1 + 1e-9));
            ratios.Add(Array.ConvertAll(costs, c => c / optimum));
            to.WriteLine(FormattableString.Invariant($"{seed,4} optimum {optimum,8:F3} of {oracle.States,8} states: {string.Join("  ", ratios[^1].Select(r => r.ToString("F4", null)))}"));
        }

        foreach (var (name, i) in Policies.Select((p, i) => (p.Name, i)))
        {
            to.WriteLine(FormattableString.Invariant($"{name,-28} mean {ratios.Average(r => r[i]):F5} worst {ratios.Max(r => r[i]):F4} optimal {ratios.Count(r => r[i] < 1 + 1e-9)} of {count}"));
        }
    }
}
