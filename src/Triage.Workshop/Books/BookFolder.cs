using System.Collections.Immutable;
using System.Globalization;
using Triage.Notes;
using Triage.Notes.Parsing;

namespace Triage.Workshop.Books;

/// <summary>
/// The folder of one book. Every write is whole or not at all: temporary file, flush, rename, under a lock that other
/// processes on the same folder respect. A file that changed since it was read is not overwritten; both versions are kept.
/// </summary>
/// <param name="source">Name, folder and trust.</param>
/// <param name="clock">Names the kept versions.</param>
public sealed class BookFolder(BookSource source, TimeProvider clock)
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);
    private const int MostTries = 20;

    private readonly Lock writing = new();

    public BookSource Source => source;

    public bool IsThere => Directory.Exists(source.Folder);

    /// <summary>Where the bench keeps what is not a note: the lock, refused versions. Ignored by the note reader.</summary>
    internal string Aside => Path.Combine(source.Folder, ".bench");

    private string Kept => Path.Combine(Aside, "kept");

    private History History => new(Aside);

    private Ledger Ledger => new(source, Aside);

    /// <summary>A note's bytes as they are on disk now; null when there is none.</summary>
    public byte[]? Read(string path)
    {
        try
        {
            return File.ReadAllBytes(Absolute(path));
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return null;
        }
    }

    /// <summary>Writes a new note. Refused when a file of that name is there already.</summary>
    public Refusal? Create(string path, ReadOnlyMemory<byte> bytes) => Locked(() => WouldNotRead(path, bytes) is { } unread ? unread
        : !File.Exists(Absolute(path)) && WriteWhole(path, null, bytes, () => !File.Exists(Absolute(path))) ? null : WorkshopRefusals.NameTaken(path));

    /// <summary>Puts new bytes in place of the ones that were read.</summary>
    /// <param name="asRead">The file as it was when the person began; anything else on disk is somebody's newer work.</param>
    public Refusal? Replace(string path, ReadOnlyMemory<byte> asRead, ReadOnlyMemory<byte> bytes) => Locked(() => WouldNotRead(path, bytes) is { } unread ? unread
        : Holds(path, asRead) && WriteWhole(path, asRead, bytes, () => Holds(path, asRead)) ? null : ChangedMeanwhile(path, bytes));

    /// <summary>
    /// Reads, changes and writes a note in one go under the lock, so that two writers' entries both stay. An editor does not know
    /// the lock: when the file changes under the change, it is made again on what the file holds then.
    /// </summary>
    /// <param name="change">New bytes from the present ones; null means: leave it.</param>
    public Refusal? Change(string path, Func<byte[], byte[]?> change) => Locked(() =>
    {
        for (var tries = 0; tries < MostTries; tries++)
        {
            if (Read(path) is not { } now)
                return WorkshopRefusals.NoteGone(path);
            if (change(now) is not { } bytes || bytes.AsSpan().SequenceEqual(now))
                return null;
            if (WouldNotRead(path, bytes) is { } unread)
                return unread;
            if (WriteWhole(path, now, bytes, () => Holds(path, now)))
                return null;
        }

        return WorkshopRefusals.KeepsChanging(path);
    });

    /// <summary>What was replaced of a file, the oldest first.</summary>
    internal ImmutableArray<PastState> PastOf(string path) => IsInside(path) ? History.Of(path) : [];

    /// <summary>Files of which something was replaced, gone ones too.</summary>
    internal IEnumerable<string> WithPast => History.Files;

    /// <summary>Forgets what was replaced of a file, and versions of it that were refused.</summary>
    internal Refusal? Forget(string path) => Locked(() =>
    {
        _ = Absolute(path);
        History.Erase(path);
        foreach (var kept in Directory.Exists(Kept) ? Directory.GetFiles(Kept, $"{Path.GetFileNameWithoutExtension(path)}.*") : [])
            File.Delete(kept);
        return null;
    });

    /// <summary>Removes what killed writers left half written; a folder that cannot be written has nothing of the kind.</summary>
    public void CleanUp() => Locked(() =>
    {
        WholeFile.RemoveHalves(source.Folder);
        return null;
    });

    private Refusal? Locked(Func<Refusal?> write)
    {
        try
        {
            if (!IsThere)
                return WorkshopRefusals.FolderGone(source.Folder);
            lock (writing)
            {
                using var held = FolderLock.Take(Aside, Patience);
                return held is null ? WorkshopRefusals.FolderBusy(source.Folder) : write();
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return IsThere ? WorkshopRefusals.CannotWrite(source.Folder, e) : WorkshopRefusals.FolderGone(source.Folder);
        }
    }

    /// <summary>What is to be written is read by the bench's own reader first: a note that nobody could read again is not put in place of one that can be.</summary>
    private Refusal? WouldNotRead(string path, ReadOnlyMemory<byte> bytes) =>
        path.EndsWith(".md", StringComparison.OrdinalIgnoreCase) && NoteReader.Read(source.Name, path, bytes) is { Note: null } reading
            && reading.Problems.FirstOrDefault(p => p.Severity == Severity.Error) is { } error
            ? WorkshopRefusals.WouldNotRead(path, error) : null;

    private bool Holds(string path, ReadOnlyMemory<byte> bytes) => Read(path) is { } now && bytes.Span.SequenceEqual(now);

    /// <summary>What is replaced is kept before it goes; what was written is entered in the ledger after.</summary>
    /// <param name="was">What is replaced; null for a new file.</param>
    private bool WriteWhole(string path, ReadOnlyMemory<byte>? was, ReadOnlyMemory<byte> bytes, Func<bool> still)
    {
        var file = Absolute(path);
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        if (was is { } before)
            History.Keep(path, new(clock.GetLocalNow(), before), file);
        if (!WholeFile.Write(file, bytes, still))
            return false;
        Ledger.Wrote(path, bytes);
        return true;
    }

    private Refusal ChangedMeanwhile(string path, ReadOnlyMemory<byte> bytes)
    {
        var stamp = clock.GetUtcNow().UtcDateTime.ToString("yyyyMMdd-HHmmss-fff", CultureInfo.InvariantCulture);
        Directory.CreateDirectory(Kept);
        var kept = FreeName(Kept, $"{Path.GetFileNameWithoutExtension(path)}.{stamp}");
        WholeFile.Write(kept, bytes, () => true);
        return WorkshopRefusals.ChangedMeanwhile(path, Path.GetRelativePath(source.Folder, kept).Replace('\\', '/'));
    }

    private static string FreeName(string folder, string name)
    {
        var free = Path.Combine(folder, $"{name}.md");
        for (var n = 2; File.Exists(free); n++)
            free = Path.Combine(folder, FormattableString.Invariant($"{name}-{n}.md"));
        return free;
    }

    /// <summary>Paths never leave the folder.</summary>
    private string Absolute(string path)
    {
        var file = Path.GetFullPath(Path.Combine(source.Folder, path));
        return IsInside(path) ? file : throw new ArgumentException($"{path} lies outside the book.", nameof(path));
    }

    private bool IsInside(string path) => Path.GetFullPath(Path.Combine(source.Folder, path))
        .StartsWith(Path.TrimEndingDirectorySeparator(Path.GetFullPath(source.Folder)) + Path.DirectorySeparatorChar, StringComparison.Ordinal);
}
