using System.Collections.Immutable;
using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Notes.Parsing;

namespace Triage.Workshop.Store;

/// <summary>The readings of one book, by path.</summary>
internal sealed record OpenBook(BookSource Source, ImmutableDictionary<string, NoteReading> Readings)
{
    public IEnumerable<Note> Notes => Readings.Values.Select(r => r.Note).OfType<Note>();

    public static OpenBook Read(BookSource source) =>
        new(source, BookReader.ReadFiles(source.Name, source.Folder).ToImmutableDictionary(r => r.Place.Path, StringComparer.Ordinal));

    /// <summary>The same book when the file says what it said before.</summary>
    public OpenBook Reread(BookFolder folder, string path)
    {
        var bytes = folder.Read(path);
        if (bytes is null)
            return Readings.ContainsKey(path) ? this with { Readings = Readings.Remove(path) } : this;
        return Readings.TryGetValue(path, out var known) && known.Text.Bytes.Span.SequenceEqual(bytes)
            ? this
            : this with { Readings = Readings.SetItem(path, NoteReader.Read(Source.Name, path, bytes)) };
    }

    public Book AsBook()
    {
        var ordered = Readings.Values.OrderBy(r => r.Place.Path, StringComparer.Ordinal).ToList();
        return new(Source.Name, [.. ordered.Select(r => r.Note).OfType<Note>()], [.. ordered.SelectMany(r => r.Problems)]);
    }
}
