namespace Triage.Reasoning.Planning;

/// <summary>Says what it costs to go on from a state, and with what.</summary>
internal interface IContinuation
{
    Valuation From(JobState state);
}

internal static class Continuation
{
    /// <summary>Cost of an option and what follows it: price + Σ P(outcome) · cost after.</summary>
    public static double CostOf(this IContinuation continuation, PlanningModel model, JobState state, int option)
    {
        var cost = model.Price(option, state.Open);
        foreach (var outcome in model.Outcomes(state, option))
        {
            cost += outcome.Next is { } next ? outcome.Probability * continuation.From(next).Cost : 0;
        }

        return cost;
    }
}
