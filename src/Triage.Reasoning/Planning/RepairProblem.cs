using System.Collections.Immutable;
using Triage.Reasoning.Inference;

namespace Triage.Reasoning.Planning;

/// <summary>
/// The state of a job as the planner sees it: what may be wrong, what can be done, what is open, what is done.
/// Objective: least expected cost to a working machine.
/// </summary>
public sealed record RepairProblem
{
    /// <summary>Posterior hypotheses, probabilities summing to 1; mass left out is in here as the unlisted fault.</summary>
    public required ImmutableArray<Hypothesis> Belief { get; init; }

    public required ImmutableArray<Option> Options { get; init; }

    public AccessTree Access { get; init; } = AccessTree.None;

    /// <summary>Access steps that are open already.</summary>
    public ImmutableArray<string> Open { get; init; } = [];

    /// <summary>Options done already; each is done at most once.</summary>
    public ImmutableArray<string> Done { get; init; } = [];

    public required Rates Rates { get; init; }
}
