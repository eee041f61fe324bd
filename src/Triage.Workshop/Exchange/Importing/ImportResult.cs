using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Workshop.Exchange.Importing;

/// <summary>What was brought in.</summary>
public sealed record ImportResult
{
    public required int Rows { get; init; }

    /// <summary>Jobs written.</summary>
    public required int Jobs { get; init; }

    /// <summary>Rows whose job was there before.</summary>
    public required int AlreadyThere { get; init; }

    public required int Rejected { get; init; }

    /// <summary>The rejected rows with the reasons; null when there are none.</summary>
    public string? RejectsFile { get; init; }

    /// <summary>Folder with all new notes; null when nothing was new.</summary>
    public string? Place { get; init; }

    /// <summary>Findings, faults, devices and classes made.</summary>
    public ImmutableArray<NewNote> NewNotes { get; init; } = [];

    public LeftOver Found { get; init; }

    /// <summary>Why nothing was brought in; null when it was.</summary>
    public Refusal? Refused { get; init; }
}

/// <summary>What bringing in would do; nothing is written.</summary>
public sealed record ImportPreview
{
    public required int Rows { get; init; }

    public required int Jobs { get; init; }

    public required int AlreadyThere { get; init; }

    public required int Rejected { get; init; }

    /// <summary>What each column becomes, in the table's order.</summary>
    public ImmutableArray<ColumnUse> Columns { get; init; } = [];

    /// <summary>Notes of the open books that the table names.</summary>
    public ImmutableArray<NewNote> KnownNotes { get; init; } = [];

    /// <summary>The first jobs, as their notes would read.</summary>
    public ImmutableArray<string> FirstNotes { get; init; } = [];

    public ImmutableArray<NewNote> NewNotes { get; init; } = [];

    /// <summary>The first rejected rows, with the reason.</summary>
    public ImmutableArray<RejectedRow> Rejects { get; init; } = [];

    public Refusal? Refused { get; init; }
}

/// <param name="Becomes">In words.</param>
public sealed record ColumnUse(string Column, string Becomes);

public sealed record NewNote(NoteKind Kind, string Id, string Name);

/// <param name="Row">From 1, the header not counted.</param>
/// <param name="Line">Line of the file on which the row starts.</param>
public sealed record RejectedRow(int Row, long Line, string Reason);

/// <summary>How far it is.</summary>
public sealed record ImportProgress(int Rows, int Jobs, int Rejected);
