using System.Collections.Immutable;

namespace Triage.Reasoning.Networks;

/// <summary>
/// What is known of one unit, in the order of time: observations belong to the epoch between two actions.
/// Epoch 0 is before any action; action k (0-based) leads from epoch k to epoch k + 1. What was not checked is not in here.
/// </summary>
public sealed record Evidence
{
    public static Evidence None { get; } = new();

    public ImmutableArray<Observation> Observations { get; init; } = [];

    /// <summary>Direct measurements of a root, as likelihoods.</summary>
    public ImmutableArray<RootLikelihood> Likelihoods { get; init; } = [];

    /// <summary>Resets, swaps and fixes with their outcomes, oldest first.</summary>
    public ImmutableArray<ActionTaken> Actions { get; init; } = [];
}

/// <summary>A finding seen with a value.</summary>
/// <param name="Finding">Index of the finding.</param>
/// <param name="Value">Index of the value seen; 0 is normal for ordered findings.</param>
/// <param name="Epoch">0 before any action, k after the k-th.</param>
public sealed record Observation(int Finding, int Value, int Epoch = 0)
{
    /// <summary>Circumstances; none named means as found, in which every link takes part.</summary>
    public Conditions Under { get; init; }

    /// <summary>How long one watched; null when as long as it takes.</summary>
    public double? WatchedMinutes { get; init; }

    /// <summary>
    /// Chance that the report is wrong, 0 to below 1: of an abnormal value that it was reported though less was there, of a normal or nominal one that what
    /// a cause shows was missed.
    /// </summary>
    public double Doubt { get; init; }
}

/// <summary>A measurement on one root: one non-negative number per state, P(reading | state); need not sum to 1.</summary>
public sealed record RootLikelihood(int Root, ImmutableArray<double> PerState, int Epoch = 0);

/// <summary>
/// A reset, swap or fix that was done. It clears each fault it names with that fault's own chance, independently;
/// a fault that it does not name stays. Repeating one action clears nothing more than the first time did.
/// </summary>
/// <param name="Id">The same id means the same action repeated.</param>
/// <param name="Clears">Chance of clearing, per (root, state).</param>
/// <param name="Outcome">What was seen right after.</param>
public sealed record ActionTaken(string Id, ImmutableArray<Clearing> Clears, ActionOutcome Outcome)
{
    /// <summary>Whether it still worked after power was lost; null while that was not tried.</summary>
    public bool? Held { get; init; }
}

/// <summary>What an action does to one root state.</summary>
/// <param name="Root">Index of the root.</param>
/// <param name="State">Index of its state.</param>
/// <param name="Works">P(the fault is silent right after).</param>
/// <param name="Holds">P(it stays silent after power is lost | it went silent).</param>
/// <param name="Leaves">State that is left when it works: 0, or one with fewer faults where only some of several tied faults are mended.</param>
public sealed record Clearing(int Root, int State, double Works, double Holds = 1, int Leaves = 0);

/// <summary>What was seen right after an action.</summary>
public enum ActionOutcome
{
    /// <summary>The unit works: every fault that was present is silent.</summary>
    Works,

    /// <summary>The unit does not work: at least one fault is still there.</summary>
    StillFaulty,

    /// <summary>Done, but nobody looked.</summary>
    NotSeen,
}
