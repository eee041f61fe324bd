using Triage.Reasoning.Planning;
using Xunit;

namespace Triage.Reasoning.Tests.Planning;

/// <summary>Nearness to the optimum where the exact programme does not fit; fifty seeds are in the benchmarks (<c>--plans</c>).</summary>
[Trait("run", "thorough")]
public sealed class TwelveFaultsTests
{
    private static readonly PlannerBudget Searched = new(300_000) { Exact = false };

    [Fact]
    public void Bounded_oracle_equals_the_whole_tree_of_histories()
    {
        foreach (var problem in Enumerable.Range(1, 10).Select(Smaller))
        {
            Assert.Equal(Oracle.Optimum(problem), new BoundedOracle(problem).Optimum(), 1e-6);
        }
    }

    /// <summary>Deep enough that most of the tree is cut off: then what is remembered of a cut must not pass for the optimum.</summary>
    [Fact]
    public void Bounded_oracle_is_the_least_over_the_first_steps()
    {
        var problem = TwelveFaults.From(3);
        var steps = Oracle.Ready(problem).Select(o => Oracle.Price(problem, o) + Oracle.Outcomes(problem, o).Where(b => b.Probability > 1e-13)
            .Sum(b => b.Probability * new BoundedOracle(Remaining(b.Next)).Optimum()));
        Assert.Equal(steps.Min(), new BoundedOracle(problem).Optimum(), 1e-6);
    }

    [Fact]
    public void Search_stays_near_the_optimum_of_twelve_faults_and_fifteen_actions()
    {
        double[] ratios = [.. new[] { 9, 13, 17, 19, 30 }.Select(TwelveFaults.From).Select(p => (Cost: Oracle.Followed(p, Searched), Problem: p))
            .Select(f => f.Cost / new BoundedOracle(f.Problem).Optimum(atMost: f.Cost * (1 + 1e-9)))];
        Assert.All(ratios, r => Assert.InRange(r, 1 - 1e-6, 1.03));
        Assert.InRange(ratios.Average(), 1 - 1e-6, 1.002);
    }

    /// <summary>The same job with what is done and what is open left out.</summary>
    private static RepairProblem Remaining(RepairProblem problem) => problem with
    {
        Options = [.. problem.Options.Where(o => !problem.Done.Contains(o.Id))],
        Done = [],
        Open = [],
        Access = new([.. problem.Access.Steps.Select(s => problem.Open.Contains(s.Id) ? s with { Minutes = 0 } : s)]),
    };

    private static RepairProblem Smaller(int seed)
    {
        var problem = TwelveFaults.From(seed);
        return problem with { Options = [.. problem.Options.Take(4), .. problem.Options.TakeLast(2)] };
    }
}
