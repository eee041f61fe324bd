using Triage.Reasoning.Networks;
using Triage.Reasoning.Planning;
using Xunit;

namespace Triage.Reasoning.Tests.Planning;

/// <summary>An hour is worth 12, a waiting hour 1, a day 6; nothing takes less than a minute of handling.</summary>
public sealed class ExpenseTests
{
    private static readonly Rates Rates = new(ValueOfHour: 12, CostOfDay: 6) { WaitingHour = 1, HandlingMinutes = 1 };

    [Theory]
    [InlineData(0, 0)]
    [InlineData(90, 1.5)]
    [InlineData(8 * 60, 8)]
    [InlineData(20 * 60, 8 + (6 * 12 / 24.0))]
    public void Waiting_costs_bench_room_for_a_working_day_and_lies_on_the_shelf_from_there_on(double minutes, double price) =>
        Assert.Equal(price, new Expense(0) { WaitMinutes = minutes }.At(Rates), 1e-12);

    [Fact]
    public void Whatever_is_done_by_hand_takes_the_handling_and_a_round_pays_it_once()
    {
        var look = Bench.Test("look", 0, (0, .5));
        Assert.Equal(.2, look.Price(Rates), 1e-12);
        Assert.Equal(.2, new RoundOption("round", new Expense(.1), [look.Reveals, Bench.Test("other", 0, (1, .5)).Reveals]).Price(Rates), 1e-12);
        Assert.Equal(.2 + 7, Bench.Fix("reset", 7, 0).Price(Rates), 1e-12);
        Assert.Equal(.4, new FixOption("fix", new Expense(2), [new Clearing(0, 1, 1)]).Price(Rates), 1e-12);
        Assert.Equal(5, Bench.Stop(5).Price(Rates), 1e-12);
    }

    [Fact]
    public void Turning_price_has_the_handling_in_it()
    {
        var problem = Bench.Problem(Bench.Single(.5, .4, .1), Bench.Stop(200), Bench.Fix("A", 10, 0), Bench.Fix("B", 10, 1));
        var handled = problem with { Rates = problem.Rates with { HandlingMinutes = 3 }, Options = [.. problem.Options.Select(o => o is FixOption ? o with { Expense = new Expense(1, 7) } : o)] };
        Assert.Equal(8, TurningPoint.Of(handled, NextStep.Choose(handled, PlannerBudget.Default))!.PriceOfSecond()!.Value, 1e-6);
    }
}
