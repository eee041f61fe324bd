using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Notes.Parsing;

namespace Triage.Workshop.Store;

/// <summary>What differs between two readings of one book.</summary>
/// <param name="Gone">Notes that are no longer there under their id.</param>
/// <param name="Readings">Files read anew.</param>
internal sealed record ChangedNotes(ImmutableArray<Note> Gone, ImmutableArray<NoteReading> Readings)
{
    public IEnumerable<Job> Jobs => Readings.Select(r => r.Note).OfType<Job>();

    /// <summary>Jobs come and go all day; everything else changes what all answers rest on.</summary>
    public bool OnlyJobs => Gone.All(n => n is Job) && Readings.All(r => r.Note is Job or null && !(r.Note is null && r.IsNote));

    /// <param name="paths">The only paths in which the two can differ.</param>
    public static ChangedNotes Between(OpenBook before, OpenBook after, IEnumerable<string> paths)
    {
        var changed = paths.Distinct(StringComparer.Ordinal)
            .Select(p => (Old: before.Index.At(p), New: after.Index.At(p)))
            .Where(c => !ReferenceEquals(c.Old, c.New))
            .ToList();
        var stillThere = changed.Select(c => c.New?.Note?.Id).OfType<string>().ToHashSet(StringComparer.Ordinal);
        return new(
            [.. changed.Select(c => c.Old?.Note).OfType<Note>().Where(n => !stillThere.Contains(n.Id))],
            [.. changed.Select(c => c.New).OfType<NoteReading>()]);
    }
}
