using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Workshop.Reviews;

namespace Triage.Workshop.Steps;

/// <summary>What is known when a machine comes in.</summary>
public sealed record TakeInRequest
{
    /// <summary>Device id or name, class id or name, or any words; what cannot be resolved is kept as it is and said.</summary>
    public required string Machine { get; init; }

    /// <summary>In the owner's words.</summary>
    public required string Complaint { get; init; }

    /// <summary>What one sees of it, in words: what feeds it, what it shows, how it is shut. Kept, and read for its build.</summary>
    public string? Description { get; init; }

    /// <summary>What was ticked of its build.</summary>
    public Build Build { get; init; } = Build.Untold;

    /// <summary>The same as typed: <c>trait=value</c>, or <c>trait=value,value</c>.</summary>
    public ImmutableArray<string> Traits { get; init; } = [];

    /// <summary>Nobody to ask: bought as defective, or one's own.</summary>
    public bool NoOwner { get; init; }

    public string? Technician { get; init; }

    public string? Owner { get; init; }

    public string? Serial { get; init; }

    public ImmutableArray<string> History { get; init; } = [];

    public Consent Consent { get; init; } = new();

    public double? Worth { get; init; }
}

/// <summary>What was found when a job is closed.</summary>
public sealed record CloseRequest
{
    public required JobOutcome Outcome { get; init; }

    /// <summary>Ids of listed causes.</summary>
    public ImmutableArray<FoundCause> Causes { get; init; } = [];

    /// <summary>A cause that no note lists yet, in free words: it becomes a listed one.</summary>
    public string? NewCause { get; init; }

    /// <summary>Grade of <see cref="NewCause"/>.</summary>
    public Grade NewCauseGrade { get; init; } = Grade.HoldUnknown;

    public ImmutableArray<string> Damage { get; init; } = [];

    public double? Minutes { get; init; }

    /// <summary>Words for the next one who meets this.</summary>
    public string? Lesson { get; init; }
}

/// <summary>What a step did: the job as it is now, or why it was refused.</summary>
public sealed record StepResult
{
    /// <summary>The job after the step; null when refused before there was one.</summary>
    public Triage.Notes.Kinds.Job? Job { get; init; }

    /// <summary>Why nothing was written; null when it was.</summary>
    public Refusal? Refused { get; init; }

    /// <summary>The entry that the step took out of the log; null for every other step.</summary>
    public LogEntry? TakenBack { get; init; }

    /// <summary>Where texts of an editor were kept that a step found no place for, relative to the book.</summary>
    public ImmutableArray<string> Kept { get; init; } = [];

    /// <summary>Things to know: words that were not understood, a device without a note.</summary>
    public ImmutableArray<string> Remarks { get; init; } = [];

    /// <summary>What closing the job changed in the knowledge.</summary>
    public ImmutableArray<Taught> Taught { get; init; } = [];
}
