using System.Collections.Immutable;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;
using Triage.Reasoning.Planning;
using Xunit;

namespace Triage.Reasoning.Tests.Planning;

/// <summary>Worked examples of worked.json: computed there in exact fractions over all orders.</summary>
public sealed class WorkedExamplesTests
{
    /// <summary>fix-sequence-a: order by p/c (Kalagnanam and Henrion 1988; Heckerman, Breese and Rommelse 1995).</summary>
    [Fact]
    public void Fixes_follow_p_over_c()
    {
        var problem = Bench.Problem(
            Bench.Single(.1, .4, .25, .2, .05),
            Bench.Stop(1000), Bench.Fix("A1", 2, 0), Bench.Fix("A2", 10, 1), Bench.Fix("A3", 3, 2), Bench.Fix("A4", 8, 3), Bench.Fix("A5", 1, 4));
        Assert.Equal(12.75, NextStep.Choose(problem, PlannerBudget.Default).Best.ExpectedCost, 1e-12);
        Assert.Equal(["A3", "A1", "A5", "A2", "A4"], Order(problem));
    }

    /// <summary>voi-3-faults: value of a free test before a sequence of fixes (Howard 1966 for the idea).</summary>
    [Fact]
    public void Free_test_comes_first_and_is_worth_what_it_saves()
    {
        Option[] fixes = [Bench.Stop(1000), Bench.Fix("1", 10, 0), Bench.Fix("2", 6, 1), Bench.Fix("3", 4, 2)];
        var test = Bench.Test("test", 0, (0, .9), (1, .2), (2, .1));
        var without = NextStep.Choose(Bench.Problem(Bench.Single(.5, .3, .2), fixes), PlannerBudget.Default);
        var with = NextStep.Choose(Bench.Problem(Bench.Single(.5, .3, .2), [.. fixes, test]), PlannerBudget.Default);
        Assert.Equal(13.8, without.Best.ExpectedCost, 1e-12);
        Assert.Equal("test", with.Best.Option.Id);
        Assert.Equal(9.98, with.Best.ExpectedCost, 1e-12);
        Assert.Equal(
            [new Branch("yes", .53, 11.056603773584905, "1"), new Branch("no", .47, 8.76595744680851, "3")],
            with.Best.Branches.Select(b => b with { Probability = Math.Round(b.Probability, 12), CostAfter = Math.Round(b.CostAfter, 12) }),
            (a, b) => a.Outcome == b.Outcome && a.Then == b.Then && Math.Abs(a.CostAfter - b.CostAfter) < 1e-9 && a.Probability == b.Probability);
    }

    private static ImmutableArray<string> Order(RepairProblem problem)
    {
        var best = NextStep.Choose(problem, PlannerBudget.Default).Best.Option;
        var (_, fails, next) = Oracle.Outcomes(problem, best).Single();
        return fails > 1e-12 ? [best.Id, .. Order(next)] : [best.Id];
    }
}
