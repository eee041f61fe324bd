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
