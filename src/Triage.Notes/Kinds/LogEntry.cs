using System.Collections.Immutable;

namespace Triage.Notes.Kinds;

/// <summary>One thing recorded on a job.</summary>
/// <param name="At">When.</param>
public abstract record LogEntry(DateTimeOffset At)
{
    /// <summary>Free words beside it.</summary>
    public string? Note { get; init; }

    /// <summary>Photo files, relative to the book.</summary>
    public ImmutableArray<string> Photos { get; init; } = [];
}

/// <summary>A finding with the value seen; not seen is the normal value, not checked is no entry at all.</summary>
public sealed record Saw(DateTimeOffset At, string Finding, string Value) : LogEntry(At)
{
    /// <summary>Chance that it is so, above 0 to 1; null when nobody doubts it.</summary>
    public double? Sure { get; init; }

    /// <summary>It comes and goes.</summary>
    public bool ComesAndGoes { get; init; }

    public ImmutableArray<string> When { get; init; } = [];

    public double? WatchedMinutes { get; init; }

    /// <summary>The words it was recognised in; null when it was tapped.</summary>
    public string? Words { get; init; }
}

/// <summary>A test done, with one of its outcomes (a value of the finding it reveals, or an outcome of its own).</summary>
public sealed record Tested(DateTimeOffset At, string Test, string Outcome) : LogEntry(At);

/// <summary>A reading as it was typed.</summary>
/// <param name="Text">From–to, mode and value as typed: "C14 + to −, ohms, power off: 12 R".</param>
public sealed record Read(DateTimeOffset At, string Text) : LogEntry(At)
{
    public string? From { get; init; }

    public string? To { get; init; }

    public string? Mode { get; init; }

    public string? Value { get; init; }

    public string? Power { get; init; }

    public string? Load { get; init; }

    public string? Instrument { get; init; }
}

/// <summary>A reset tried.</summary>
public sealed record ResetTried(DateTimeOffset At, string Reset, Effect Effect) : LogEntry(At);

/// <summary>A fix done.</summary>
public sealed record Fixed(DateTimeOffset At, string Fix, Effect Effect) : LogEntry(At)
{
    /// <summary>The new part was tested before it went in.</summary>
    public bool? TestedBefore { get; init; }
}

/// <summary>A part exchanged for one known to be good.</summary>
/// <param name="Part">Designator, role or part class.</param>
/// <param name="Fix">Fix id that the swap stands for; null when none is listed.</param>
/// <param name="OldBack">True: old part back and the fault returned; false: it stayed away; null: not tried.</param>
public sealed record Swapped(DateTimeOffset At, string Part, string? Fix, Effect Effect, bool? OldBack) : LogEntry(At);

/// <summary>Whether the last thing that worked still worked later.</summary>
/// <param name="Action">Reset or fix id.</param>
/// <param name="StillWorks">False: the fault is back.</param>
/// <param name="After">power-loss, soak, days…</param>
public sealed record Held(DateTimeOffset At, string Action, bool StillWorks, string? After) : LogEntry(At);

/// <summary>An access step opened or closed again.</summary>
public sealed record Opened(DateTimeOffset At, string Step, bool Shut) : LogEntry(At);

/// <summary>Something taken off or put back: the strip-down.</summary>
/// <param name="What">Screw, shield, cable, board.</param>
/// <param name="Where">Where it lies now.</param>
public sealed record TakenOff(DateTimeOffset At, string What, string? Where, bool BackOn) : LogEntry(At);

/// <summary>Power put on the unit for the first time, with its limit.</summary>
public sealed record Powered(DateTimeOffset At, PowerStage Stage, string? Current) : LogEntry(At);

/// <summary>The part and the wait: needed, ordered, arrived, tested, fitted.</summary>
public sealed record PartMoved(DateTimeOffset At, string Part, PartState State) : LogEntry(At)
{
    public double? Price { get; init; }

    public double? Shipping { get; init; }

    public double? LeadDays { get; init; }

    public string? From { get; init; }

    public string? DateCode { get; init; }

    /// <summary>Taken out of the drawer's list, which counts one fewer since.</summary>
    public bool FromDrawer { get; init; }
}

/// <summary>A quick line, kept as written.</summary>
public sealed record QuickLine(DateTimeOffset At, string Text) : LogEntry(At);

/// <summary>A protect step of the class done, or found not to be possible.</summary>
public sealed record Secured(DateTimeOffset At, string Protect, bool Done) : LogEntry(At);

/// <summary>A step that was offered and not done.</summary>
/// <param name="Step">Id of a test, finding, reset, fix or protect step.</param>
public sealed record Skipped(DateTimeOffset At, string Step, SkipReason Why) : LogEntry(At);

/// <summary>A round gone through; each of its rows has an entry of its own.</summary>
/// <param name="Round">Test id.</param>
public sealed record RoundDone(DateTimeOffset At, string Round) : LogEntry(At);

/// <summary>The owner has left.</summary>
public sealed record CounterClosed(DateTimeOffset At) : LogEntry(At);

public enum SkipReason
{
    CannotTell,
    Skip,
}

public enum PartState
{
    Needed,
    Ordered,
    Arrived,
    TestedGood,
    TestedBad,
    Fitted,
}

/// <summary>What a reset, swap or fix did, as seen right after.</summary>
public enum Effect
{
    Works,
    NoChange,
    Worse,
    NotSeen,
}
