using System.Collections.Immutable;

namespace Triage.Notes.Kinds;

/// <summary>One unit on the bench, open or closed.</summary>
public sealed record Job(string Id, string Name) : Note(Id, Name)
{
    public override NoteKind Kind => NoteKind.Job;

    /// <summary>Device id; null when the model has no note.</summary>
    public string? Device { get; init; }

    /// <summary>Device class id, when the device has no note.</summary>
    public string? Class { get; init; }

    /// <summary>What it says on the machine, when the device has no note.</summary>
    public string? Unit { get; init; }

    public DateTimeOffset? Opened { get; init; }

    public DateTimeOffset? Closed { get; init; }

    public string? Technician { get; init; }

    /// <summary>Never shared.</summary>
    public string? Owner { get; init; }

    /// <summary>Never shared.</summary>
    public string? Serial { get; init; }

    /// <summary>In the owner's words.</summary>
    public string Complaint { get; init; } = "";

    public ImmutableArray<string> History { get; init; } = [];

    public Consent Consent { get; init; } = new();

    /// <summary>What the working machine is worth; null when nobody said.</summary>
    public double? Worth { get; init; }

    /// <summary>Everything recorded, oldest first.</summary>
    public ImmutableArray<LogEntry> Log { get; init; } = [];

    public ImmutableArray<FoundCause> Causes { get; init; } = [];

    /// <summary>Damage that followed from the causes, found with them.</summary>
    public ImmutableArray<string> Damage { get; init; } = [];

    /// <summary>Null while open.</summary>
    public JobOutcome? Outcome { get; init; }

    /// <summary>What it waits for; null for the bench itself.</summary>
    public Waiting? WaitsFor { get; init; }

    public double? Minutes { get; init; }

    public ImmutableArray<FollowUp> FollowUps { get; init; } = [];

    /// <summary>What was told of this machine's build.</summary>
    public Build Build { get; init; } = Build.Untold;

    /// <summary>Nobody to ask: bought as defective, or one's own.</summary>
    public bool NoOwner { get; init; }

    /// <summary>Made by a program, not by a person; said on the page.</summary>
    public bool Generated { get; init; }

    public bool IsOpen => Outcome is null;
}

/// <param name="SpendingLimit">Null when none was named.</param>
/// <param name="MayErase">Whether stored data may go; null when not asked yet.</param>
/// <param name="OriginalsBack">Whether old parts are wanted back; null when not asked yet.</param>
public sealed record Consent(double? SpendingLimit = null, bool? MayErase = null, bool? OriginalsBack = null);

/// <param name="Fault">Fault id.</param>
/// <param name="Grade">How sure.</param>
/// <param name="Chance">Share of belief when several causes compete; 1 when sure.</param>
/// <param name="WasNew">No listed fault described it when the job was closed.</param>
public sealed record FoundCause(string Fault, Grade Grade, double Chance = 1, bool WasNew = false);

public enum JobOutcome
{
    Mended,
    WorkedAround,
    PartedOut,
    HandedOver,
    NothingWrong,
    Unsolved,
}

/// <param name="For">part, owner, cool-down, soak…</param>
/// <param name="Until">Null when open-ended.</param>
public sealed record Waiting(string For, DateTimeOffset? Until);

/// <param name="On">When the unit was heard of.</param>
/// <param name="CameBack">True: the fault is back; false: heard of as good.</param>
public sealed record FollowUp(DateTimeOffset On, bool CameBack, string? Note);
