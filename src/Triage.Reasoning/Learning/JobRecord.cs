using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>What a closed job tells the learner. Ids only; no words.</summary>
public sealed record JobRecord
{
    public required string Id { get; init; }

    /// <summary>Closing date: the canonical order of jobs is (Closed, Id).</summary>
    public required DateTimeOffset Closed { get; init; }

    /// <summary>From the most special to the most general: device, device class. Everything shares "all" above these.</summary>
    public required ImmutableArray<string> Levels { get; init; }

    /// <summary>Id of the scope that says which faults this machine could have had; empty for any fault that the notes list.</summary>
    public string Scope { get; init; } = KnownScope.Anything;

    /// <summary>
    /// Causes with the chance that each was there (1 when sure); several entries of chance 1 are a double fault.
    /// A cause that was new when the job closed says so.
    /// </summary>
    public required ImmutableArray<JobCause> Causes { get; init; }

    /// <summary>Grade of the cause × trust in the book: 0 … 1.</summary>
    public required double Weight { get; init; }

    /// <summary>Findings that were checked before the first action, with the value seen. Not checked is not in here.</summary>
    public ImmutableArray<CheckedFinding> Checked { get; init; } = [];

    /// <summary>Resets, swaps and fixes tried.</summary>
    public ImmutableArray<TriedAction> Tried { get; init; } = [];
}

/// <param name="Fault">Fault id.</param>
/// <param name="Chance">Responsibility, 0 … 1.</param>
/// <param name="WasNew">No listed fault described it when the job was closed.</param>
public sealed record JobCause(string Fault, double Chance = 1, bool WasNew = false);

/// <param name="Finding">Finding id.</param>
/// <param name="Value">Name of the value seen.</param>
public sealed record CheckedFinding(string Finding, string Value);

/// <param name="Action">Reset or fix id.</param>
/// <param name="Works">Seen to work right after; null when not seen.</param>
/// <param name="Held">Still worked when last heard of (after power loss for a reset); null when no news.</param>
/// <param name="QuietDays">Days from the action to when it came back, or to when the unit was last heard from; 0 when never.</param>
public sealed record TriedAction(string Action, bool? Works, bool? Held, double QuietDays = 0)
{
    /// <summary>It worked and nobody said whether it held, but it was quiet for some days.</summary>
    internal bool OnlyQuiet => Works == true && Held is null && QuietDays > 0;
}
