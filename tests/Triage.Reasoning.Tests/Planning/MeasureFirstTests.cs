using Triage.Reasoning.Networks;
using Triage.Reasoning.Planning;
using Xunit;

namespace Triage.Reasoning.Tests.Planning;

/// <summary>A rebuild at 40 that may be wrong, and a measurement that could say so.</summary>
public sealed class MeasureFirstTests
{
    private static TestOption Measure(string id, double price) => new(
        id, new Expense(0, price), new Finding(id, ["good", "bad"], [.9, .1], [new Link(0, 1, [.1, .9])]) { Nominal = true });

    private static RepairProblem Posed(double belief, double price, params Option[] more) => Bench.Problem(
        Bench.Single(belief, 1 - belief),
        [Bench.Stop(300), Bench.Fix("rebuild", 40, 0) with { CheckedBy = ["measure", "measure too"] }, Bench.Fix("other", 45, 1), Measure("measure", price), .. more]);

    private static BlockedOption? Held(RepairProblem problem) => NextStep.Choose(problem, PlannerBudget.Default).Blocked.SingleOrDefault(b => b.Option.Id == "rebuild");

    /// <summary>(1 − p) · 40 against the price: it waits while what is thrown away on average is no less than the check.</summary>
    [Theory]
    [InlineData(.6, 15, true)]
    [InlineData(.6, 17, false)]
    [InlineData(.9, 3, true)]
    [InlineData(.9, 5, false)]
    public void Waits_for_its_check_while_that_is_worth_its_price(double belief, double price, bool waits)
    {
        var held = Held(Posed(belief, price));
        Assert.Equal(waits ? "Measure first: measure." : null, held?.Why);
        Assert.Equal(waits ? "measure" : null, held?.MeasureFirst);
    }

    [Fact]
    public void Harm_counts_with_the_price_of_the_fix()
    {
        var problem = Posed(.9, 5);
        var harmful = problem with { Options = [.. problem.Options.Select(o => o is FixOption ? o with { Expense = o.Expense with { DamageChance = .1, DamagePrice = 200 } } : o)] };
        Assert.Null(Held(problem));
        Assert.NotNull(Held(harmful));
    }

    /// <summary>Behind its own lid the check costs 15; behind the lid that the fix needs as well, 5.</summary>
    [Theory]
    [InlineData("back", false)]
    [InlineData("lid", true)]
    [InlineData(null, true)]
    public void Opening_that_the_fix_needs_as_well_does_not_count_against_the_check(string? access, bool waits)
    {
        var problem = Posed(.8, 5) with { Access = new([new AccessStep("lid", 10, null), new AccessStep("back", 10, null)]) };
        Assert.Equal(waits, Held(problem with { Options = [.. problem.Options.Select(o => o.Id switch { "rebuild" => o with { Access = access is null ? null : "lid" }, "measure" => o with { Access = access }, _ => o })] }) is not null);
    }

    [Fact]
    public void One_check_is_enough_and_one_that_cannot_be_done_holds_up_nothing()
    {
        Assert.Null(Held(Posed(.6, 5, Measure("measure too", 7)) with { Done = ["measure too"] }));
        Assert.Null(Held(Posed(.6, 5) with { Done = ["measure"] }));
        Assert.Equal("measure too", Held(Posed(.6, 5, Measure("measure too", 4)))!.MeasureFirst);
        var problem = Posed(.6, 5);
        Assert.Null(Held(problem with { Options = problem.Options.Replace(problem.Options[3], problem.Options[3] with { Blocked = "no meter" }) }));
        Assert.Null(Held(problem with { Options = problem.Options.RemoveAt(3) }));
        Assert.Null(Held(problem with { Options = problem.Options.Replace(problem.Options[3], problem.Options[3] with { After = ["rebuild"] }) }));
    }

    /// <summary>The plan that waits is the plan in which the check comes before the fix: 5, then .6 · .1 + .4 · .9 = .42 "good".</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Look_ahead_waits_as_well(bool exact)
    {
        var problem = Posed(.6, 5);
        var after = problem with { Options = [.. problem.Options.Select(o => o is FixOption { Id: "rebuild" } f ? f with { CheckedBy = [], After = ["measure"] } : o)] };
        var (held, ordered) = (NextStep.Choose(problem, PlannerBudget.Default with { Exact = exact }), NextStep.Choose(after, PlannerBudget.Default with { Exact = exact }));
        Assert.Equal(ordered.Ranked.Select(r => (r.Option.Id, r.ExpectedCost)), held.Ranked.Select(r => (r.Option.Id, r.ExpectedCost)));
        Assert.Equal(Oracle.Optimum(after), held.Best.ExpectedCost, 1e-9);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Either_of_two_checks_lets_it_go_on(bool exact)
    {
        var problem = Posed(.6, 5, Measure("measure too", 7));
        var advice = NextStep.Choose(problem, PlannerBudget.Default with { Exact = exact });
        Assert.Equal("rebuild", advice.Ranked.Single(r => r.Option.Id == "measure too").Branches.Single(b => b.Outcome == "bad").Then);
        Assert.Equal("rebuild", advice.Ranked.Single(r => r.Option.Id == "measure").Branches.Single(b => b.Outcome == "bad").Then);
    }
}
