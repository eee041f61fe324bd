namespace Triage.Reasoning.Planning;

/// <summary>
/// Dynamic programme over every state that can be reached, memoised on what was done with which outcome: V(s) is the least over
/// stopping and every ready option of its price and what follows.
/// </summary>
internal sealed class ExactProgramme(PlanningModel model, IContinuation oneStep, long budget) : IContinuation
{
    private readonly Dictionary<string, Valuation> _known = [];

    /// <summary>Whether all states, counted as if every outcome were possible, fit a budget of nodes.</summary>
    public static bool Fits(PlanningModel model, long budget)
    {
        var nodes = (double)model.Space.Count;
        foreach (var option in model.ReadyLater())
        {
            nodes *= model.Looks.Has(option) ? model.Looks.Of(option, model.Start.Done).Rows.Length + 1 : 2;
        }

        return nodes * model.Options.Length <= budget;
    }

    /// <summary>False once the budget is used up: then what it says is not to be believed.</summary>
    public bool Complete => model.Nodes <= budget;

    public Valuation From(JobState state)
    {
        var key = model.Key(state);
        if (_known.TryGetValue(key, out var known) || !Complete)
        {
            return known;
        }

        return _known[key] = Best(state);
    }

    private Valuation Best(JobState state)
    {
        var informed = new PerfectInformation(model, state);
        var atMost = oneStep.From(state).Cost;
        var best = model.CheapestStop(state.Done, state.Open);
        foreach (var option in model.ReadyOptions(state))
        {
            if (model.Options[option] is not StopOption && informed.Bound(option) <= Math.Min(atMost, best.Cost) * (1 + Valuation.Tie))
            {
                best = best.OrBetter(new Valuation(this.CostOf(model, state, option), option));
            }
        }

        return best;
    }
}
