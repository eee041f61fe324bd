using Triage.Notes;
using Triage.Notes.Parsing;

namespace Triage.Workshop.Books;

/// <summary>What is to be written is read first as it will be read afterwards: a note that can be read stays one, and nothing that it said gets lost.</summary>
internal static class ReadBack
{
    /// <param name="before">What the file holds; null for a new one. One that could not be read anyway may become anything.</param>
    /// <returns>Null when it may be written.</returns>
    public static Refusal? Refuses(string path, ReadOnlyMemory<byte>? before, ReadOnlyMemory<byte> after)
    {
        if (!path.EndsWith(".md", StringComparison.OrdinalIgnoreCase))
            return null;
        var was = before is { } bytes ? NoteReader.Read("", path, bytes) : null;
        if (was is { Note: null })
            return null;
        var becomes = NoteReader.Read("", path, after);
        var known = (was?.Problems ?? []).Select(p => p.What).ToHashSet(StringComparer.Ordinal);
        var wrong = becomes.Problems.Where(p => p.Severity > Severity.Hint && !known.Contains(p.What)).OrderByDescending(p => p.Severity).FirstOrDefault();
        return wrong is not null ? WorkshopRefusals.WouldNotBeRead(path, wrong)
            : becomes.Note is null ? WorkshopRefusals.NoNote(path)
            : null;
    }
}
