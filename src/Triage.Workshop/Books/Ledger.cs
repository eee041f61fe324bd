using System.Collections.Immutable;
using System.Security.Cryptography;
using Triage.Notes.Kinds;
using Triage.Notes.Parsing;

namespace Triage.Workshop.Books;

/// <summary>
/// What each file held when it was last written or looked over, in <c>.bench/ledger</c>: a line of JSON for each writing, of which the last
/// counts. Only under the folder's lock.
/// </summary>
/// <param name="source">The book.</param>
/// <param name="aside">Its folder for what is not a note.</param>
internal sealed class Ledger(BookSource source, string aside)
{
    /// <summary>Bytes of newer lines after which only the last line of each file is kept.</summary>
    private const long Room = 256_000;

    /// <summary>Bytes at the end that hold more writings than there are in a second.</summary>
    private const int Lately = 32_000;

    private string File => Path.Combine(aside, "ledger");

    /// <summary>A file was written. A ledger that cannot be written keeps nothing from being recorded: the file is then found changed by hand.</summary>
    public void Wrote(string path, ReadOnlyMemory<byte> bytes)
    {
        try
        {
            Add(Entry(path, bytes, TimeOf(path)));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // the note itself is written, and that is what was asked for
        }
    }

    /// <summary>Whether a bench, this one or another, wrote just this not long ago; an editor's writing is in no ledger.</summary>
    public bool WroteLately(ReadOnlySpan<byte> bytes) =>
        JsonLines.Tail(File, Lately).Contains(Convert.ToHexStringLower(SHA256.HashData(bytes)), StringComparison.Ordinal);

    /// <summary>By path.</summary>
    public ImmutableDictionary<string, LedgerEntry> Read()
    {
        var last = ImmutableDictionary.CreateBuilder<string, LedgerEntry>(StringComparer.Ordinal);
        foreach (var entry in JsonLines.Read<LedgerEntry>(File).Where(e => e.Path?.Length > 0))
            last[entry.Path] = entry;
        return last.ToImmutable();
    }

    public void Replace(IEnumerable<LedgerEntry> entries) =>
        WholeFile.Write(File, entries.OrderBy(e => e.Path, StringComparer.Ordinal).SelectMany(JsonLines.Line).ToArray(), () => true);

    /// <summary>What is to be written of a file.</summary>
    /// <param name="time">When it says it was written, looked at before its bytes were.</param>
    public LedgerEntry Entry(string path, ReadOnlyMemory<byte> bytes, DateTimeOffset time)
    {
        var note = path.EndsWith(".md", StringComparison.OrdinalIgnoreCase) ? NoteReader.Read(source.Name, path, bytes).Note : null;
        return new(path, bytes.Length, Convert.ToHexStringLower(SHA256.HashData(bytes.Span)), time, note?.Id, (note as Job)?.Log.Length);
    }

    public DateTimeOffset TimeOf(string path) => System.IO.File.GetLastWriteTimeUtc(Path.Combine(source.Folder, path));

    private void Add(LedgerEntry entry)
    {
        var line = JsonLines.Line(entry);
        var before = JsonLines.Append(File, line);
        if (before / Room != (before + line.Length) / Room)
            Replace(Read().Values);
    }
}

/// <param name="Path">Relative to the book.</param>
/// <param name="Bytes">Its length.</param>
/// <param name="Time">When the file says it was written.</param>
/// <param name="Id">Of a note that could be read; null for other files.</param>
/// <param name="Log">Entries in a job's log; null for other files.</param>
internal sealed record LedgerEntry(string Path, long Bytes, string Sha256, DateTimeOffset Time, string? Id, int? Log);
