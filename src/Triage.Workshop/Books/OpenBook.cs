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
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(5), Pause = TimeSpan.FromMilliseconds(50);

    /// <exception cref="IOException">The folder is gone.</exception>
    public static OpenBook Read(BookSource source)
    {
        var files = BookReader.Paths(source.Folder, source.Folder).ToList().AsParallel()
            .Select(path => ReadWhole(source, path))
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
            return Fingerprints.ContainsKey(path) ? this with { Index = Index.Without(path), Fingerprints = Fingerprints.Remove(path) } : this;
        var reading = BookReader.ReadFile(Source.Name, Source.Folder, path);
        var fingerprint = Fingerprint(reading);
        return Fingerprints.TryGetValue(path, out var before) && before == fingerprint
            ? this
            : this with { Index = Index.With(reading), Fingerprints = Fingerprints.SetItem(path, fingerprint) };
    }

    /// <summary>Files that are being saved just now and cannot be read so far: what they said before counts on. With when that was first seen.</summary>
    public ImmutableDictionary<string, DateTimeOffset> BeingSaved { get; init; } = [];

    /// <summary>The same, but a note that an editor has begun to write and not ended stays as it was until its file has been left alone.</summary>
    public OpenBook RereadPatiently(string path)
    {
        var now = TimeProvider.System.GetUtcNow();
        var since = BeingSaved.GetValueOrDefault(path, now);
        var read = Reread(path);
        var isHalf = Index.At(path)?.Note is not null && read.Index.At(path)?.Note is null;
        return isHalf && (SavedNow.Is(Path.Combine(Source.Folder, path)) || (!IsThere(path) && (now - since).Duration() < SavedNow.Quiet))
            ? this with { BeingSaved = BeingSaved.SetItem(path, since) }
            : read with { BeingSaved = BeingSaved.Remove(path) };
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

    /// <summary>A note that is being saved while the book is opened is waited for; one that stays unreadable is taken as it is.</summary>
    private static NoteReading ReadWhole(BookSource source, string path)
    {
        var reading = BookReader.ReadFile(source.Name, source.Folder, path);
        for (var waited = TimeSpan.Zero; reading.Note is null && waited < Longest && SavedNow.Is(Path.Combine(source.Folder, path)); waited += Pause)
        {
            Thread.Sleep(Pause);
            reading = BookReader.ReadFile(source.Name, source.Folder, path);
        }

        return reading;
    }

    private static UInt128 Fingerprint(NoteReading reading) =>
        BinaryPrimitives.ReadUInt128BigEndian(SHA256.HashData(reading.Text.Bytes.Span));
}
