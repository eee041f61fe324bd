using Triage.Reasoning.Planning;
using Xunit;

namespace Triage.Reasoning.Tests.Planning;

/// <summary>
/// More options than are looked at closely. With single faults, one sure fix for each, doing them in the order of p/c is the
/// optimum (Kalagnanam and Henrion 1988), whichever of them comes first.
/// </summary>
public sealed class ManyOptionsTests
{
    [Fact]
    public void The_best_two_dozen_cost_what_they_do_first_and_the_rest_in_the_order_of_probability_over_price_others_never_less()
    {
        var random = new Random(1);
        var fixes = Enumerable.Range(0, 60).Select(n => (Id: $"fix {n}", Fault: n, P: 0.1 + random.NextDouble(), Price: 1 + random.Next(40))).ToList();
        var total = fixes.Sum(f => f.P);
        fixes = [.. fixes.Select(f => f with { P = f.P / total }).OrderByDescending(f => f.P / f.Price)];
        var problem = Bench.Problem(
            Bench.Single([.. fixes.OrderBy(f => f.Fault).Select(f => f.P)]),
            [Bench.Stop(1e6), .. fixes.Select(f => Bench.Fix(f.Id, f.Price, f.Fault))]);

        var advice = NextStep.Choose(problem, new PlannerBudget(1) { Exact = false });

        Assert.Equal(fixes[0].Id, advice.Best.Option.Id);
        var costs = fixes.Select(f => (f.Id, Cost: Cost([f, .. fixes.Where(other => other != f)]), Said: advice.Ranked.Single(r => r.Option.Id == f.Id).ExpectedCost)).OrderBy(c => c.Cost).ToList();
        Assert.All(costs.Take(24), c => Assert.Equal(c.Cost, c.Said, 1e-6));
        Assert.All(costs.Skip(24), c => Assert.InRange(c.Said, c.Cost - 1e-6, Cost(fixes) + fixes.Single(f => f.Id == c.Id).Price + 1e-6));
    }

    private static double Cost(IEnumerable<(string Id, int Fault, double P, int Price)> order)
    {
        var (cost, failing) = (0.0, 1.0);
        foreach (var (_, _, p, price) in order)
        {
            cost += failing * price;
            failing -= p;
        }

        return cost;
    }
}
