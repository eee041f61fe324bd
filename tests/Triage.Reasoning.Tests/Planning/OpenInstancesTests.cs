using Triage.Reasoning.Planning;
using Xunit;

namespace Triage.Reasoning.Tests.Planning;

public sealed class OpenInstancesTests
{
    private static readonly PlannerBudget LookAhead = PlannerBudget.Default with { Exact = false };

    public static TheoryData<string> Ids => [.. OpenInstance.All.Select(i => i.Id)];

    [Theory]
    [MemberData(nameof(Ids))]
    public void Exact_programme_finds_the_optimum_and_one_of_the_best_first_steps(string id)
    {
        var instance = OpenInstance.All.Single(i => i.Id == id);
        var best = NextStep.Choose(instance.Problem, PlannerBudget.Default).Best;
        Assert.Equal(instance.Optimum, best.ExpectedCost, 1e-9 * instance.Optimum);
        Assert.Contains(best.Option.Id, instance.FirstActions);
    }

    /// <summary>Aim: mean at most 1.002 and worst at most 1.03 times the optimum without the exact programme.</summary>
    [Theory]
    [InlineData(20_000_000, 1.0, 1.0)]
    [InlineData(50_000, 1.002, 1.03)]
    [InlineData(1, 1.0052, 1.0328)]
    public void Look_ahead_followed_to_the_end_stays_near_the_optimum(int nodes, double mean, double worst)
    {
        var ratios = OpenInstance.All.Select(i => Oracle.Followed(i.Problem, LookAhead with { Nodes = nodes }) / i.Optimum).ToList();
        Assert.InRange(ratios.Average(), 1 - 1e-9, mean + 1e-9);
        Assert.InRange(ratios.Max(), 1 - 1e-9, worst + 1e-9);
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void One_step_is_never_worse_than_a_sequence_of_fixes_with_or_without_a_stop(string id)
    {
        var instance = OpenInstance.All.Single(i => i.Id == id);
        var cost = Oracle.Followed(instance.Problem, LookAhead with { Nodes = 1 });
        foreach (var policy in new[] { "pc", "pc_best_stop" })
        {
            Assert.InRange(cost, 0, instance.Policies.GetProperty(policy).GetProperty("cost").GetDouble() * (1 + 1e-9));
        }
    }
}
