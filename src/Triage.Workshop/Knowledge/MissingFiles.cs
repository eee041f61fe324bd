using Triage.Notes;
using Triage.Notes.Kinds;

namespace Triage.Workshop.Knowledge;

/// <summary>Photos and drawings that a note names and that are not in its book.</summary>
public static class MissingFiles
{
    /// <param name="notes">Notes of one book.</param>
    /// <param name="folder">The book's folder.</param>
    public static IEnumerable<Problem> Of(IEnumerable<Note> notes, string folder) =>
        from note in notes
        from file in NamedFiles.Kept(note).Distinct(StringComparer.Ordinal)
        where !File.Exists(Path.Combine(folder, file))
        select new Problem(note.Place.Path, 0, 0, Severity.Warning, $"{(note is Job ? "The photo" : "The drawing")} {file} is not there.", "Put it back from a backup, or take its name out of the note.");
}
