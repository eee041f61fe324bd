using Triage.Reasoning.Planning;
using Xunit;

namespace Triage.Reasoning.Tests.Planning;

/// <summary>Nearness to the optimum where the exact programme does not fit; fifty seeds are in the benchmarks (<c>--plans</c>).</summary>
public sealed class TwelveFaultsTests
{
    private static readonly PlannerBudget RollOut = new(300_000) { Exact = false };

    [Fact]
    public void Bounded_oracle_equals_the_whole_tree_of_histories()
    {
        foreach (var problem in Enumerable.Range(1, 10).Select(Smaller))
        {
            Assert.Equal(Oracle.Optimum(problem), new BoundedOracle(problem).Optimum(), 1e-6);
        }
    }

    [Fact]
    public void Roll_out_stays_near_the_optimum_of_twelve_faults_and_fifteen_actions()
    {
        double[] ratios = [.. new[] { 9, 13, 17, 19, 30 }.Select(TwelveFaults.From).Select(p => (Cost: Oracle.Followed(p, RollOut), Problem: p))
            .Select(f => f.Cost / new BoundedOracle(f.Problem).Optimum(atMost: f.Cost * (1 + 1e-9)))];
        Assert.All(ratios, r => Assert.InRange(r, 1 - 1e-6, 1.03));
        Assert.InRange(ratios.Average(), 1 - 1e-6, 1.005);
    }

    private static RepairProblem Smaller(int seed)
    {
        var problem = TwelveFaults.From(seed);
        return problem with { Options = [.. problem.Options.Take(4), .. problem.Options.TakeLast(2)] };
    }
}
