using FsCheck.Xunit;
using Triage.Reasoning.Planning;
using Xunit;

namespace Triage.Reasoning.Tests.Planning;

[Trait("run", "long")]
public sealed class PlannerPropertiesTests
{
    private static Advice Exact(RepairProblem problem) => NextStep.Choose(problem, PlannerBudget.Default);

    private static Advice OneStep(RepairProblem problem) => NextStep.Choose(problem, new PlannerBudget(1) { Exact = false });

    [Property(MaxTest = 40, StartSize = 1000, EndSize = 1000000)]
    public void Exact_programme_equals_the_whole_tree_of_histories(int seed)
    {
        var problem = RandomProblem.From(seed);
        var optimum = Oracle.Optimum(problem);
        Assert.Equal(optimum, Exact(problem).Best.ExpectedCost, 1e-9 * optimum);
        Assert.Equal(optimum, Oracle.Followed(problem, PlannerBudget.Default), 1e-9 * optimum);
    }

    [Property(MaxTest = 40, StartSize = 1000, EndSize = 1000000)]
    public void Look_ahead_never_promises_less_than_the_optimum_and_the_search_comes_within_a_thousandth(int seed)
    {
        var problem = RandomProblem.From(seed);
        var optimum = Oracle.Optimum(problem);
        Assert.InRange(OneStep(problem).Best.ExpectedCost, optimum * (1 - 1e-9), double.MaxValue);
        // the search ends with its budget: of seed 345797 it is 5e-6 above
        Assert.InRange(NextStep.Choose(problem, PlannerBudget.Default with { Exact = false }).Best.ExpectedCost, optimum * (1 - 1e-9), optimum * 1.001);
    }

    /// <summary>Aim: mean at most 1.002 and worst at most 1.03 times the optimum, double faults and order of work included.</summary>
    [Theory]
    [InlineData(3000, 1.002, 1.03)]
    [InlineData(1, 1.012, 1.2)]
    public void Look_ahead_followed_to_the_end_stays_near_the_optimum(int nodes, double mean, double worst)
    {
        var ratios = Enumerable.Range(1, 60).Select(seed => RandomProblem.From(seed))
            .Select(p => Oracle.Followed(p, new PlannerBudget(nodes) { Exact = false }) / NextStep.Choose(p, PlannerBudget.Default).Best.ExpectedCost).ToList();
        Assert.InRange(ratios.Average(), 1 - 1e-9, mean);
        Assert.InRange(ratios.Max(), 1 - 1e-9, worst);
    }

    /// <summary>P(value) is the mean over hypotheses, and each hypothesis's values sum to 1: expected posterior equals prior.</summary>
    [Property(MaxTest = 40, StartSize = 1000, EndSize = 1000000)]
    public void Expected_posterior_equals_prior_for_every_test(int seed)
    {
        var problem = RandomProblem.From(seed);
        var sure = problem.Belief.Select(h => (h.Probability, Advice: OneStep(problem with { Belief = [h with { Probability = 1 }] }))).ToList();
        foreach (var test in OneStep(problem).Ranked.Where(r => r.Option is TestOption))
        {
            var given = sure.Select(s => (s.Probability, Of: s.Advice.Ranked.Single(r => r.Option.Id == test.Option.Id).Branches)).ToList();
            Assert.All(given, g => Assert.Equal(1, g.Of.Sum(b => b.Probability), 1e-12));
            Assert.All(test.Branches, b => Assert.Equal(
                given.Sum(g => g.Probability * g.Of.Where(x => x.Outcome == b.Outcome).Sum(x => x.Probability)), b.Probability, 1e-12));
        }
    }

    [Property(MaxTest = 40, StartSize = 1000, EndSize = 1000000)]
    public void Branches_are_those_of_the_definition_and_explain_the_cost(int seed)
    {
        var problem = RandomProblem.From(seed);
        foreach (var ranked in new[] { Exact(problem), OneStep(problem) }.SelectMany(a => a.Ranked).Where(r => r.Option is not StopOption))
        {
            Assert.Equal(Oracle.Price(problem, ranked.Option), ranked.PriceNow, 1e-9);
            Assert.Equal(ranked.ExpectedCost, ranked.PriceNow + ranked.Branches.Sum(b => b.Probability * b.CostAfter), 1e-9);
            foreach (var outcome in Oracle.Outcomes(problem, ranked.Option).Where(o => o.Probability > 1e-12))
            {
                Assert.Equal(outcome.Probability, ranked.Branches.Single(b => b.Outcome == outcome.Name).Probability, 1e-12);
            }
        }
    }

    [Property(MaxTest = 40, StartSize = 1000, EndSize = 1000000)]
    public void One_more_option_never_raises_the_optimum(int seed)
    {
        var problem = RandomProblem.From(seed, fixes: 4, tests: 3);
        var fewer = problem with { Options = problem.Options.RemoveAt(4) };
        Assert.InRange(Exact(problem).Best.ExpectedCost, 0, Exact(fewer).Best.ExpectedCost * (1 + 1e-9));
    }

    [Property(MaxTest = 40, StartSize = 1000, EndSize = 1000000)]
    public void Scaled_costs_scale_the_answer(int seed)
    {
        var problem = RandomProblem.From(seed, fixes: 4, tests: 3);
        var scaled = problem with
        {
            Rates = new Rates(problem.Rates.ValueOfHour * 4, problem.Rates.CostOfDay * 4),
            Options = [.. problem.Options.Select(o => o with { Expense = o.Expense with { Money = o.Expense.Money * 4 } })],
        };
        Assert.Equal(
            Exact(problem).Ranked.Select(r => (r.Option.Id, r.ExpectedCost * 4)), Exact(scaled).Ranked.Select(r => (r.Option.Id, r.ExpectedCost)));
    }

    [Property(MaxTest = 40, StartSize = 1000, EndSize = 1000000)]
    public void Names_change_nothing(int seed)
    {
        var problem = RandomProblem.From(seed, fixes: 4, tests: 3);
        var renamed = problem with { Options = [.. problem.Options.Select(o => o with { Id = "x" + o.Id, After = [.. o.After.Select(a => "x" + a)] })] };
        Assert.Equal(
            Exact(problem).Ranked.Select(r => ("x" + r.Option.Id, r.ExpectedCost)), Exact(renamed).Ranked.Select(r => (r.Option.Id, r.ExpectedCost)));
    }
}
