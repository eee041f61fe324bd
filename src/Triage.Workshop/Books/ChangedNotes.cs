using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Notes.Parsing;

namespace Triage.Workshop.Books;

/// <summary>What differs between two readings of one book.</summary>
/// <param name="Files">Each file that differs, as it was and as it is; null where there was or is none.</param>
internal sealed record ChangedNotes(ImmutableArray<(NoteReading? Before, NoteReading? After)> Files)
{
    public static ChangedNotes None { get; } = new([]);

    /// <summary>Ids that a changed file claimed or claims.</summary>
    public ImmutableHashSet<string> Ids { get; } = [.. Notes(Files).Select(n => n.Id)];

    public IEnumerable<string> Paths => Files.Select(f => (f.After ?? f.Before)!.Place.Path);

    /// <summary>The same with their former ids.</summary>
    public IEnumerable<string> Names => Ids.Concat(Notes(Files).SelectMany(n => n.Formerly));

    /// <param name="paths">The only paths in which the two can differ.</param>
    public static ChangedNotes Between(OpenBook before, OpenBook after, IEnumerable<string> paths) =>
        new([.. paths.Select(p => (before.Index.At(p), after.Index.At(p))).Where(f => !ReferenceEquals(f.Item1, f.Item2))]);

    private static IEnumerable<Note> Notes(IEnumerable<(NoteReading? Before, NoteReading? After)> files) =>
        files.SelectMany(f => (Note?[])[f.Before?.Note, f.After?.Note]).OfType<Note>();
}
