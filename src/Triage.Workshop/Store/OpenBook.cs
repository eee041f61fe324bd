using System.Collections.Immutable;
using System.Security.Cryptography;
using Triage.Notes;
using Triage.Notes.Parsing;

namespace Triage.Workshop.Store;

/// <summary>One open book: its notes by path, and what each file held when it was last read.</summary>
internal sealed record OpenBook(BookSource Source, BookIndex Index, ImmutableDictionary<string, string> Fingerprints)
{
    public static OpenBook Read(BookSource source) => new(source, BookReader.ReadIndex(source.Name, source.Folder), ImmutableDictionary.Create<string, string>(StringComparer.Ordinal));

    /// <summary>The book with one file read again; the same book when the file holds what it held before.</summary>
    public OpenBook Reread(BookFolder folder, string path)
    {
        if (folder.Read(path) is not { } bytes)
            return Index.At(path) is null ? this : this with { Index = Index.Without(path), Fingerprints = Fingerprints.Remove(path) };
        var fingerprint = Convert.ToHexString(SHA256.HashData(bytes));
        return Fingerprints.GetValueOrDefault(path) == fingerprint
            ? this
            : this with { Index = Index.With(NoteReader.Read(Source.Name, path, bytes)), Fingerprints = Fingerprints.SetItem(path, fingerprint) };
    }
}
