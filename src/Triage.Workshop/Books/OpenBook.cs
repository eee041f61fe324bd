using System.Buffers.Binary;
using System.Collections.Immutable;
using System.Security.Cryptography;
using Triage.Notes;
using Triage.Notes.Files;
using Triage.Notes.Parsing;

namespace Triage.Workshop.Books;

/// <summary>One open book: its notes by path, and what each file held when it was last read.</summary>
internal sealed record OpenBook(BookSource Source, BookIndex Index, ImmutableDictionary<string, UInt128> Fingerprints)
{
    /// <exception cref="IOException">The folder is gone.</exception>
    public static OpenBook Read(BookSource source)
    {
        var files = BookReader.Paths(source.Folder, source.Folder).ToList().AsParallel()
            .Select(path => BookReader.ReadFile(source.Name, source.Folder, path))
            .Select(reading => (Reading: reading.Note is null ? reading : reading with { Text = new() }, Fingerprint: Fingerprint(reading)))
            .ToList();
        return new(
            source,
            BookIndex.Of(source.Name, files.Select(f => f.Reading)),
            files.ToImmutableDictionary(f => f.Reading.Place.Path, f => f.Fingerprint, StringComparer.Ordinal));
    }

    /// <summary>The book with one file read again; the same book when the file holds what it held before.</summary>
    public OpenBook Reread(string path)
    {
        if (!IsThere(path))
            return Fingerprints.ContainsKey(path) ? new(Source, Index.Without(path), Fingerprints.Remove(path)) : this;
        var reading = BookReader.ReadFile(Source.Name, Source.Folder, path);
        var fingerprint = Fingerprint(reading);
        return Fingerprints.TryGetValue(path, out var before) && before == fingerprint
            ? this
            : new(Source, Index.With(reading), Fingerprints.SetItem(path, fingerprint));
    }

    /// <summary>Notes that a change at a path may concern: the file itself, or all that lay or lie in the folder.</summary>
    /// <param name="path">Relative to the book; empty for the whole of it.</param>
    public IEnumerable<string> NotesAt(string path)
    {
        var known = path.Length == 0 ? Fingerprints.Keys : Fingerprints.Keys.Where(p => p.StartsWith(path + "/", StringComparison.Ordinal));
        return InBook.At(Source.Folder, path) is { } folder && Directory.Exists(folder) ? known.Union(BookReader.Paths(Source.Folder, folder), StringComparer.Ordinal)
            : path.EndsWith(".md", StringComparison.OrdinalIgnoreCase) ? [path]
            : known;
    }

    /// <summary>Links are not followed: they may lead out of the book.</summary>
    private bool IsThere(string path) => InBook.At(Source.Folder, path) is { } file && File.Exists(file);

    private static UInt128 Fingerprint(NoteReading reading) =>
        BinaryPrimitives.ReadUInt128BigEndian(SHA256.HashData(reading.Text.Bytes.Span));
}
