using Triage.Reasoning.Planning;

namespace Triage.SolvePlans;

/// <summary>Follows the planner's advice to the end along every outcome, asking anew in every state.</summary>
internal sealed class PolicyWalk(Instance instance, PlannerBudget budget)
{
    private readonly Job _job = new(instance);
    private readonly SortedDictionary<string, string> _policy = new(StringComparer.Ordinal);

    public Answer Follow() => new(instance.Id, CostFrom(new SortedDictionary<string, char>(StringComparer.Ordinal), _job.Prior), _policy);

    /// <summary>Exact expected cost of the policy from a state: weights are prior times likelihood, fault by fault.</summary>
    private double CostFrom(SortedDictionary<string, char> done, double[] weights)
    {
        var best = NextStep.Choose(_job.After(done.Keys, weights), budget).Best;
        _policy[string.Join(',', done.Select(d => d.Key + d.Value))] = best.Option.Id;
        var cost = best.PriceNow;
        foreach (var sign in best.Option is StopOption ? "" : _job.Signs(best.Option.Id))
        {
            double[] after = [.. weights.Zip(_job.Likelihood(best.Option.Id, sign), (w, p) => w * p)];
            if (after.Sum() > 0)
            {
                cost += after.Sum() / weights.Sum() * CostFrom(new(done, StringComparer.Ordinal) { [best.Option.Id] = sign }, after);
            }
        }

        return cost;
    }
}
