namespace Triage.Reasoning.Planning;

/// <summary>How much the planner may think: counted, not timed, so that the same question always gets the same answer.</summary>
/// <param name="Nodes">
/// One node is one hypothesis or one fix weighed in one belief. The one-step look-ahead over all options (where there are many, over those that a short look picks) is always finished;
/// the budget bounds what is looked at beyond it. More than 0.
/// </param>
public sealed record PlannerBudget(int Nodes)
{
    public static PlannerBudget Default { get; } = new(8_000_000);

    /// <summary>What a belief costs besides its hypotheses, in nodes: measured, so that nodes stay near in time whatever the size.</summary>
    internal const int NodesPerBelief = 100;

    /// <summary>Solve the whole problem exactly where it fits; false to show how good the look-ahead is by itself.</summary>
    public bool Exact { get; init; } = true;
}
