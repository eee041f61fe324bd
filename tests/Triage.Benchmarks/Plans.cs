using Triage.Reasoning.Planning;
using Triage.Reasoning.Tests.Planning;

namespace Triage.Benchmarks;

/// <summary>How near the planner comes to the optimum without the exact programme, beside simpler policies: twelve faults, fifteen actions.</summary>
internal static class Plans
{
    /// <summary>As much thought as an answer of the product gets.</summary>
    public static PlannerBudget RollOut { get; } = new(2_000_000) { Exact = false };

    private static PlannerBudget OneStep { get; } = new(1) { Exact = false };

    private static readonly (string Name, Func<RepairProblem, double> Cost)[] Policies =
    [
        ("look-ahead with roll-out", p => Oracle.Followed(p, RollOut)),
        ("one-step look-ahead alone", p => Oracle.Followed(p, OneStep)),
        ("p/c with the best stop", p => SimplePolicies.Followed(p, SimplePolicies.ProbabilityOverPrice)),
        ("information first", p => SimplePolicies.Followed(p, SimplePolicies.InformationFirst)),
    ];

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
