using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Notes.Parsing;

namespace Triage.Notes;

/// <summary>The notes of one folder and what is wrong with them. Reading never throws for what a note says.</summary>
/// <param name="Name">Name of the book.</param>
/// <param name="Notes">Notes that can be reasoned with, in the order of their paths.</param>
/// <param name="Problems">Everything wrong, in the order of path and line.</param>
public sealed record Book(string Name, ImmutableArray<Note> Notes, ImmutableArray<Problem> Problems)
{
    /// <summary>Notes that can be searched as text but not reasoned with: unreadable ones, and all that share one id.</summary>
    public ImmutableArray<NoteReading> SearchOnly { get; init; } = [];
}

/// <summary>Something wrong with a note.</summary>
/// <param name="Path">Relative to the book.</param>
/// <param name="Line">From 1; 0 when the whole file is meant.</param>
/// <param name="Column">From 1; 0 when the whole line is meant.</param>
/// <param name="What">What is wrong.</param>
/// <param name="Instead">What to write or do instead.</param>
public sealed record Problem(string Path, int Line, int Column, Severity Severity, string What, string Instead)
{
    public override string ToString() => $"{Path}:{Line}:{Column}: {What} {Instead}".TrimEnd();
}

public enum Severity
{
    /// <summary>Worth knowing; the note is used.</summary>
    Hint,

    /// <summary>The note is used without this field, and not learned from where the field matters.</summary>
    Warning,

    /// <summary>The note is searchable but not used for reasoning or learning.</summary>
    Error,
}
