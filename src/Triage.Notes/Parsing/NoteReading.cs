using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Notes.Parsing;

/// <summary>What came of reading one file.</summary>
/// <param name="Note">Null when the file is no note, or when an error keeps it from being used.</param>
/// <param name="Problems">In the order of line and column.</param>
/// <param name="Text">The file itself, also when it could not be read as a note.</param>
public sealed record NoteReading(Note? Note, ImmutableArray<Problem> Problems, NoteText Text)
{
    public required NotePlace Place { get; init; }

    /// <summary>False for Markdown without front matter, which is left alone.</summary>
    public bool IsNote => Note is not null || Problems.Length > 0;
}
