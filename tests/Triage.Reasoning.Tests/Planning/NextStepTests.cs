using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;
using Triage.Reasoning.Planning;
using Xunit;

namespace Triage.Reasoning.Tests.Planning;

/// <summary>Small cases worked out by hand.</summary>
public sealed class NextStepTests
{
    private static readonly AccessTree OneLid = new([new AccessStep("lid", 10, null)]);

    [Theory]
    [InlineData(true, "behind the lid", 3)]
    [InlineData(false, "outside", 5)]
    public void Dearer_lid_is_paid_only_while_it_is_closed(bool open, string best, double price)
    {
        var problem = Bench.Problem(
            Bench.Single(.5, .5), Bench.Stop(60), Bench.Fix("first", 30, 0), Bench.Fix("second", 30, 1),
            Bench.Test("behind the lid", 3, (0, 1)) with { Access = "lid" }, Bench.Test("outside", 5, (0, 1)))
            with { Access = OneLid, Open = open ? ["lid"] : [] };
        var step = NextStep.Choose(problem, PlannerBudget.Default).Best;
        Assert.Equal(best, step.Option.Id);
        Assert.Equal(price, step.PriceNow, 1e-12);
        Assert.Equal(price + 30, step.ExpectedCost, 1e-12);
    }

    /// <summary>Alone neither fix behind the lid beats the one outside: .4/15 against .2/6; together .8/20 do.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Neighbours_behind_one_lid_share_its_price(bool exact)
    {
        var problem = Bench.Problem(
            Bench.Single(.4, .4, .2), Bench.Stop(500), Bench.Fix("outside", 6, 2),
            Bench.Fix("left", 5, 0) with { Access = "lid" }, Bench.Fix("right", 5, 1) with { Access = "lid" })
            with { Access = OneLid };
        var advice = NextStep.Choose(problem, new PlannerBudget(exact ? 1_000_000 : 1) { Exact = exact });
        Assert.Equal("left", advice.Best.Option.Id);
        Assert.Equal(15 + .6 * 5 + .2 * 6, advice.Best.ExpectedCost, 1e-12);
        Assert.Equal(["lid"], advice.Best.Opens);
    }

    [Fact]
    public void Expected_damage_is_part_of_the_price()
    {
        var risky = new FixOption("risky", new Expense(1, DamageChance: .1, DamagePrice: 200), [new Clearing(0, 1, 1)]);
        var safe = new FixOption("safe", new Expense(15), [new Clearing(0, 1, 1)]);
        var advice = NextStep.Choose(Bench.Problem(Bench.Single(1), Bench.Stop(100), risky, safe), PlannerBudget.Default);
        Assert.Equal([15, 21, 100], advice.Ranked.Select(r => r.ExpectedCost));
    }

    [Fact]
    public void Minutes_money_and_waiting_days_make_one_price()
    {
        var fix = new FixOption("fix", new Expense(Minutes: 30, Money: 4, WaitDays: 3), [new Clearing(0, 1, 1)]);
        Assert.Equal(30 + 4 + 3 * 10, NextStep.Choose(Bench.Problem(Bench.Single(1), Bench.Stop(500), fix), PlannerBudget.Default).Best.PriceNow, 1e-12);
    }

    [Fact]
    public void Cold_check_is_done_for_the_sake_of_what_it_allows()
    {
        var problem = Bench.Problem(
            Bench.Single(1), Bench.Stop(100), Bench.Fix("fix", 10, 0) with { After = ["powered check"] },
            Bench.Test("powered check", 2) with { After = ["cold check"] }, Bench.Test("cold check", 1));
        var advice = NextStep.Choose(problem, new PlannerBudget(1) { Exact = false });
        Assert.Equal("cold check", advice.Best.Option.Id);
        Assert.Equal(13, advice.Best.ExpectedCost, 1e-12);
        Assert.Equal(["comes after \"powered check\"", "comes after \"cold check\""], advice.Blocked.Select(b => b.Why));
        var later = NextStep.Choose(problem with { Done = ["cold check", "powered check"] }, PlannerBudget.Default);
        Assert.Equal("fix", later.Best.Option.Id);
        Assert.Empty(later.Blocked);
    }

    [Fact]
    public void What_must_come_first_but_does_not_exist_blocks_in_words()
    {
        var advice = NextStep.Choose(Bench.Problem(
            Bench.Single(1), Bench.Stop(100), Bench.Fix("fix", 10, 0) with { After = ["owner agreed"] }), PlannerBudget.Default);
        Assert.Equal("stop", advice.Best.Option.Id);
        Assert.Equal("comes after \"owner agreed\", which is neither done nor among the options", advice.Blocked.Single().Why);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void No_cost_buys_what_a_hard_rule_forbids(bool exact)
    {
        var problem = Bench.Problem(
            Bench.Single(.5, .5), Bench.Stop(100), Bench.Fix("agreed", 10, 0),
            Bench.Fix("over the limit", 0, 0, 1) with { Blocked = "costs more than the owner agreed to" });
        var advice = NextStep.Choose(problem, PlannerBudget.Default with { Exact = exact });
        Assert.Equal("agreed", advice.Best.Option.Id);
        Assert.Equal(10 + .5 * 100, advice.Best.ExpectedCost, 1e-12);
        Assert.Equal("costs more than the owner agreed to", advice.Blocked.Single().Why);
    }

    [Fact]
    public void Stop_at_once_where_mending_costs_more_than_it_is_worth()
    {
        var advice = NextStep.Choose(Bench.Problem(
            Bench.Single(.5, .5), Bench.Stop(20, "park"), Bench.Stop(12, "part out"), Bench.Fix("first", 15, 0), Bench.Fix("second", 15, 1)), PlannerBudget.Default);
        Assert.Equal("part out", advice.Best.Option.Id);
        Assert.Equal(12, advice.Best.ExpectedCost, 1e-12);
        Assert.Empty(advice.Best.Branches);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Second_fix_finishes_what_the_first_began(bool exact)
    {
        var problem = Bench.Problem(
            [Bench.Faults(.5, 0, 1), Bench.Faults(.5, 0)], Bench.Stop(50), Bench.Fix("A", 10, (0, .8)), Bench.Fix("B", 20, 1));
        var advice = NextStep.Choose(problem, PlannerBudget.Default with { Exact = exact });
        Assert.Equal("A", advice.Best.Option.Id);
        // after A fails (.6): {b} .4, {a,b} .1, {a} .1, so B works with 2/3, else stop
        Assert.Equal(10 + .6 * (20 + 50 / 3.0), advice.Best.ExpectedCost, 1e-12);
        var stillFaulty = advice.Best.Branches.Single(b => b.Outcome == "still faulty");
        Assert.Equal("B", stillFaulty.Then);
        Assert.Equal(.6, stillFaulty.Probability, 1e-12);
    }

    /// <summary>Two faults tied into state 3 of one root: mending the first leaves the second (state 2), as two roots would.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Mending_one_of_two_tied_faults_leaves_the_other(bool exact)
    {
        var first = new FixOption("A", new Expense(0, 10), [new(0, 1, .8), new(0, 3, .8, Leaves: 2)]);
        var second = new FixOption("B", new Expense(0, 20), [new(0, 2, 1), new(0, 3, 1, Leaves: 1)]);
        var problem = Bench.Problem([new(.5, [new(0, 3)]), new(.5, [new(0, 1)])], Bench.Stop(50), first, second);
        var advice = NextStep.Choose(problem, PlannerBudget.Default with { Exact = exact });
        Assert.Equal("A", advice.Best.Option.Id);
        Assert.Equal(10 + .6 * (20 + 50 / 3.0), advice.Best.ExpectedCost, 1e-12);
        Assert.Equal(Oracle.Optimum(problem), advice.Best.ExpectedCost, 1e-12);
    }

    [Fact]
    public void Sure_double_fault_takes_both_fixes_even_by_one_step()
    {
        var advice = NextStep.Choose(Bench.Problem(
            [Bench.Faults(1, 0, 1)], Bench.Stop(100), Bench.Fix("A", 10, 0), Bench.Fix("B", 20, 1)), new PlannerBudget(1) { Exact = false });
        Assert.Equal("A", advice.Best.Option.Id);
        Assert.Equal(30, advice.Best.ExpectedCost, 1e-12);
    }

    [Fact]
    public void Test_that_tells_two_equal_faults_apart_gains_one_bit()
    {
        var advice = NextStep.Choose(Bench.Problem(
            Bench.Single(.5, .5), Bench.Stop(100), Bench.Test("tells", 1, (0, 1)), Bench.Test("tells nothing", 1, (0, .3), (1, .3)),
            Bench.Fix("half", 50, 0)), PlannerBudget.Default);
        Assert.Equal([1, 0, 1, 0], new[] { "tells", "tells nothing", "half", "stop" }.Select(id => Math.Round(advice.Ranked.Single(r => r.Option.Id == id).InformationGain, 12)));
    }

    [Fact]
    public void Best_of_equals_is_the_first_in_the_given_order()
    {
        Option[] fixes = [Bench.Fix("A", 10, 0), Bench.Fix("B", 10, 1)];
        Assert.Equal("A", NextStep.Choose(Bench.Problem(Bench.Single(.5, .5), [Bench.Stop(90), .. fixes]), PlannerBudget.Default).Best.Option.Id);
        Assert.Equal("B", NextStep.Choose(Bench.Problem(Bench.Single(.5, .5), [Bench.Stop(90), .. fixes.Reverse()]), PlannerBudget.Default).Best.Option.Id);
    }

    /// <summary>Both checks have to be made before the fix, so that every order costs the same: the one that tells something goes first.</summary>
    [Fact]
    public void Of_checks_that_must_all_be_made_the_one_that_tells_more_comes_first()
    {
        var problem = Bench.Problem(
            Bench.Single(.6, .4), Bench.Stop(100), Bench.Fix("powered fix", 10, 0, 1) with { After = ["dull check", "telling check"] },
            Bench.Test("dull check", 2), Bench.Test("telling check", 2, (0, .9)));
        var advice = NextStep.Choose(problem, PlannerBudget.Default);
        Assert.Equal("dull check", advice.Best.Option.Id);
        Assert.Equal("telling check", advice.PreferringWhatTellsMore(within: .005).Best.Option.Id);
    }

    [Fact]
    public void What_tells_more_does_not_come_first_where_it_is_dearer_now_or_costs_more_in_all()
    {
        var problem = Bench.Problem(
            Bench.Single(.6, .4), Bench.Stop(100), Bench.Fix("powered fix", 10, 0, 1) with { After = ["dull check"] },
            Bench.Test("dull check", 2), Bench.Test("telling check", 2, (0, .9)));
        Assert.Equal("dull check", NextStep.Choose(problem, PlannerBudget.Default).PreferringWhatTellsMore(within: .005).Best.Option.Id);
        var dearer = problem with { Options = [.. problem.Options.Take(2), Bench.Test("dull check", 1), Bench.Test("telling check", 1.01, (0, .9))] };
        Assert.Equal("dull check", NextStep.Choose(dearer, PlannerBudget.Default).PreferringWhatTellsMore(within: .5).Best.Option.Id);
    }

    public static TheoryData<RepairProblem, string> Refused => new()
    {
        { Bench.Problem(Bench.Single(1), Bench.Fix("fix", 1, 0)), "no stop option that is allowed now" },
        { Bench.Problem(Bench.Single(1), Bench.Stop(1) with { Blocked = "no" }), "no stop option that is allowed now" },
        { Bench.Problem(Bench.Single(.5, .4), Bench.Stop(1)), "sum to 0.9, not 1" },
        { Bench.Problem(Bench.Single(1), Bench.Stop(1), Bench.Stop(2)), "two options have the id \"stop\"" },
        { Bench.Problem(Bench.Single(1), Bench.Stop(1), Bench.Fix("fix", 1, 0) with { Access = "lid" }), "needs access step \"lid\"" },
        { Bench.Problem(Bench.Single(1), Bench.Stop(1), Bench.Fix("fix", 1, (0, 1.5))), "option \"fix\" clears root 0 state 1 with chances 1.5" },
        { Bench.Problem(Bench.Single(1), Bench.Stop(-3)), "option \"stop\" costs -3" },
    };

    [Theory]
    [MemberData(nameof(Refused))]
    public void Refuses_what_cannot_be_planned_and_says_where(RepairProblem problem, string says)
    {
        var wrong = Assert.Throws<ArgumentException>(() => NextStep.Choose(problem, PlannerBudget.Default));
        Assert.Contains(says, wrong.Message, StringComparison.Ordinal);
    }
}
