using Triage.Reasoning.Networks;
using Triage.Reasoning.Planning;
using Xunit;

namespace Triage.Reasoning.Tests.Planning;

/// <summary>A cause at .6 with its own check and mend, and ten looks of little value: an hour is worth 12, a look takes a minute.</summary>
public sealed class LeadingCauseTests
{
    private const int Rivals = 10;

    private static RepairProblem Posed() => new()
    {
        Belief = Bench.Single([.6, .. Enumerable.Repeat(.4 / Rivals, Rivals)]),
        Options =
        [
            .. Enumerable.Range(1, Rivals).Select(n => new TestOption($"look {n}", new Expense(.2), Look(n))),
            new TestOption("own check", new Expense(6), new Finding("own", ["good", "bad"], [.95, .05], [new Link(0, 1, [.07, .93])]) { Nominal = true }),
            new FixOption("own mend", new Expense(30, 6), [new Clearing(0, 1, .9)]) { CheckedBy = ["own check"] },
            .. Enumerable.Range(1, Rivals).Select(n => new FixOption($"mend {n}", new Expense(25, 6), [new Clearing(n, 1, .9)])),
            Bench.Stop(300),
        ],
        Rates = new Rates(ValueOfHour: 12, CostOfDay: .5) { HandlingMinutes = 1 },
    };

    private static Finding Look(int rival) => new($"finding {rival}", ["normal", "odd"], [.98, .02], [new Link(rival, 1, [.85, .15])]);

    [Theory]
    [InlineData(1)]
    [InlineData(300_000)]
    [InlineData(8_000_000)]
    public void Cause_that_stands_out_is_not_put_off_by_small_looks_however_little_is_thought(int nodes)
    {
        Assert.Equal(["own check", "own mend"], Played(Posed(), nodes));
        Assert.Equal(["own check", "own mend"], Played(InOneRound(), nodes).Where(id => id != "round"));
    }

    private static RepairProblem InOneRound()
    {
        var problem = Posed();
        return problem with { Options = [new RoundOption("round", new Expense(1), [.. Enumerable.Range(1, Rivals).Select(Look)]), .. problem.Options.RemoveRange(0, Rivals)] };
    }

    /// <summary>Whatever it shows, both is done: it tells a bit and costs next to nothing, but it changes nothing.</summary>
    [Fact]
    public void Look_that_changes_nothing_does_not_come_before_what_is_done_anyway()
    {
        var problem = Bench.Problem(Bench.Single(.5, .5), Bench.Stop(100), Bench.Fix("both", 10, (0, .9), (1, .9)), Bench.Test("tells which", .01, (0, 1)));
        var advice = NextStep.Choose(problem, PlannerBudget.Default);
        Assert.Equal("both", advice.PreferringWhatTellsMore(within: .005).Best.Option.Id);
        Assert.Equal("both", advice.Ranked.Single(r => r.Option.Id == "tells which").ThenAnyway!.Option);
    }

    [Fact]
    public void Nothing_leads_that_is_not_likelier_than_everything_else_together()
    {
        var problem = Bench.Problem(Bench.Single(.5, .5), Bench.Stop(100), Bench.Fix("A", 10, 0), Bench.Fix("B", 10, 1));
        Assert.DoesNotContain(NextStep.Choose(problem, PlannerBudget.Default).Ranked, r => r.OnLeadingCause);
        Assert.Equal(["A"], NextStep.Choose(problem with { Belief = Bench.Single(.6, .4) }, PlannerBudget.Default).Ranked.Where(r => r.OnLeadingCause).Select(r => r.Option.Id));
    }

    /// <summary>What is done until the mend, when every look finds nothing and the check finds it bad.</summary>
    private static IEnumerable<string> Played(RepairProblem problem, int nodes)
    {
        while (true)
        {
            var best = NextStep.Choose(problem, new PlannerBudget(nodes)).PreferringWhatTellsMore(.005).Best.Option;
            yield return best.Id;
            if (best is FixOption or StopOption)
            {
                yield break;
            }

            problem = Oracle.Outcomes(problem, best).First(o => best.Id != "own check" || o.Name == "bad").Next;
        }
    }
}
