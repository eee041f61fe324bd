using Triage.Reasoning.Planning;
using Xunit;

namespace Triage.Reasoning.Tests.Planning;

/// <summary>Where the runner-up becomes as good: by hand, and by the whole tree of histories.</summary>
public sealed class TurningPointTests
{
    private static TurningPoint Of(RepairProblem problem) => TurningPoint.Of(problem, NextStep.Choose(problem, PlannerBudget.Default))!;

    /// <summary>p/c (Heckerman, Breese and Rommelse 1995): with .5/10 against .4/c the second is as good at c = 8, and .5/c against .4/10 at 12.5.</summary>
    [Fact]
    public void Two_fixes_turn_where_probability_over_price_is_equal()
    {
        var problem = Bench.Problem(Bench.Single(.5, .4, .1), Bench.Stop(200), Bench.Fix("A", 10, 0), Bench.Fix("B", 10, 1));
        Assert.Equal(8, Of(problem).PriceOfSecond()!.Value, 1e-6);
        Assert.Equal(12.5, Of(problem).PriceOfFirst()!.Value, 1e-6);
    }

    /// <summary>At equal prices the likelier goes first: with the third fault at .1, A and B share .9 as 5 to 4, so A turns at q where q = (1 − q) · .4/.5.</summary>
    [Fact]
    public void Two_fixes_of_one_price_turn_where_their_causes_are_equally_likely()
    {
        var problem = Bench.Problem(Bench.Single(.5, .4, .1), Bench.Stop(200), Bench.Fix("A", 10, 0), Bench.Fix("B", 10, 1));
        Assert.Equal(.8 / 1.8, Of(problem).Chance(h => h.Faulty.Any(f => f.Root == 0))!.Value, 1e-6);
        Assert.Equal(.5 / 1.1, Of(problem).Chance(h => h.Faulty.Any(f => f.Root == 1))!.Value, 1e-6);
    }

    /// <summary>Telling nothing costs 10 for the lid and 1; giving up after it costs 100 however dear the fix is.</summary>
    [Fact]
    public void What_no_price_can_better_has_no_turning_price()
    {
        var problem = Bench.Problem(Bench.Single(1), Bench.Stop(100), Bench.Fix("mends", 10, 0), Bench.Test("tells nothing", 1) with { Access = "lid" })
            with { Access = new([new AccessStep("lid", 10, null)]) };
        Assert.Null(Of(problem).PriceOfSecond());
        Assert.Equal(111, Of(problem).PriceOfFirst()!.Value, 1e-6);
    }

    /// <summary>At the price found, the whole tree of histories costs the same whichever of the two goes first.</summary>
    [Fact]
    public void At_the_turning_price_both_orders_cost_the_same_by_the_whole_tree()
    {
        var turned = 0;
        foreach (var problem in Enumerable.Range(1, 40).Select(seed => RandomProblem.From(seed, fixes: 3, tests: 2)))
        {
            var advice = NextStep.Choose(problem, PlannerBudget.Default);
            if (TurningPoint.Of(problem, advice)?.PriceOfSecond() is not { } price || advice.Ranked[1].Option is StopOption)
            {
                continue;
            }

            turned++;
            var (first, second) = (advice.Ranked[0].Option.Id, advice.Ranked[1].Option.Id);
            var there = Priced(problem, second, price);
            Assert.Equal(Begun(there, first), Begun(there, second), 1e-5);
        }

        Assert.InRange(turned, 8, 40);
    }

    private static double Begun(RepairProblem problem, string id)
    {
        var option = problem.Options.Single(o => o.Id == id);
        return Oracle.Price(problem, option) + Oracle.Outcomes(problem, option).Where(o => o.Probability > 1e-12).Sum(o => o.Probability * Oracle.Optimum(o.Next));
    }

    private static RepairProblem Priced(RepairProblem problem, string id, double price) => problem with
    {
        Options = [.. problem.Options.Select(o => o.Id == id ? o with { Expense = new Expense(0, price) } : o)],
    };
}
