using System.Collections.Immutable;
using System.Text;
using Triage.Notes.Files;

namespace Triage.Workshop.Books;

/// <summary>
/// The folder of one book. Every write is whole or not at all: temporary file, flush, rename, flush of the folder, under a lock that other
/// processes on the same folder respect. A file that changed since it was read is not overwritten; both versions are kept. What would no
/// longer be read is not written.
/// </summary>
/// <param name="source">Name, folder and trust.</param>
/// <param name="clock">Names the kept versions.</param>
public sealed class BookFolder(BookSource source, TimeProvider clock)
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10), Pause = TimeSpan.FromMilliseconds(50);
    private const int MostTries = 20;

    private readonly Lock writing = new();

    public BookSource Source => source;

    public bool IsThere => Directory.Exists(source.Folder);

    /// <summary>What is written with.</summary>
    internal Disk Disk { get; init; } = Disk.Real;

    /// <summary>Where the bench keeps what is not a note: the lock, refused versions. Ignored by the note reader.</summary>
    internal string Aside => Path.Combine(source.Folder, ".bench");

    internal KeptTexts Kept => field ??= new(source.Folder, clock);

    /// <summary>Texts that found no place in their notes.</summary>
    public IEnumerable<Notes.Problem> FoundNoPlace => Kept.Problems;

    private History History => new(Aside);

    internal Ledger Ledger => new(source, Aside);

    /// <summary>A note's bytes as they are on disk now; null when there is none in the book: what a link leads to is none.</summary>
    public byte[]? Read(string path)
    {
        try
        {
            return InBook.At(source.Folder, path) is { } file ? InBook.ReadAll(file) : null;
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return null;
        }
    }

    /// <summary>Whether somebody who is no bench changed a file just now.</summary>
    internal bool IsBeingSaved(string path) => Read(path) is { } now && SavedNow.Is(Absolute(path)) && !Ledger.WroteLately(now);

    /// <summary>Writes a new note. Refused when a file of that name is there already.</summary>
    public Refusal? Create(string path, ReadOnlyMemory<byte> bytes) => Locked(path, () =>
        File.Exists(Absolute(path)) ? WorkshopRefusals.NameTaken(path)
        : ReadBack.Refuses(path, null, bytes) is { } refused ? refused
        : WriteWhole(path, null, bytes) ? null : WorkshopRefusals.NameTaken(path));

    /// <summary>Writes a file that is named by what it holds, unless it is there; one that is there and was cut is made whole.</summary>
    public Refusal? Keep(string path, ReadOnlyMemory<byte> bytes) => Locked(path, () =>
    {
        var before = Read(path);
        if (before is null || !bytes.Span.SequenceEqual(before))
            return WriteWhole(path, before is null ? default(ReadOnlyMemory<byte>?) : before, bytes) ? null : WorkshopRefusals.KeepsChanging(path);
        WholeFile.FlushName(Absolute(path), Disk);
        return null;
    });

    /// <summary>Takes a file away that a refused step wrote, unless the note names it by now.</summary>
    internal void TakeAway(string path, string note) => Locked(path, () =>
    {
        if (Read(note) is not { } text || text.AsSpan().IndexOf(Encoding.UTF8.GetBytes(path)) < 0)
            File.Delete(Absolute(path));
        return null;
    });

    /// <summary>Puts new bytes in place of the ones that were read.</summary>
    /// <param name="asRead">The file as it was when the person began; anything else on disk is somebody's newer work.</param>
    public Refusal? Replace(string path, ReadOnlyMemory<byte> asRead, ReadOnlyMemory<byte> bytes) => Locked(path, () =>
        Holds(path, asRead) && (bytes.Span.SequenceEqual(asRead.Span) || WriteWhole(path, asRead, bytes)) ? null : Kept.Refused(path, bytes, Disk));

    /// <summary>
    /// Reads, changes and writes a note in one go under the lock, so that two writers' entries both stay. An editor does not know
    /// the lock: one that saves just now is waited for, and when the file changes under the change, it is made again on what it holds then.
    /// </summary>
    /// <param name="change">New bytes from the present ones; null means: leave it.</param>
    public Refusal? Change(string path, Func<byte[], byte[]?> change)
    {
        for (var waited = TimeSpan.Zero; ; waited += Pause)
        {
            var busy = false;
            var refused = Locked(path, () => (busy = IsBeingSaved(path, waited)) ? WorkshopRefusals.KeepsChanging(path) : Changed(path, change));
            if (!busy || waited >= Patience)
                return refused;
            Thread.Sleep(Pause);
        }
    }

    /// <summary>What was replaced of a file, the oldest first.</summary>
    internal ImmutableArray<PastState> PastOf(string path) => IsInside(path) ? History.Of(path) : [];

    /// <summary>Files of which something was replaced, gone ones too.</summary>
    internal IEnumerable<string> WithPast => History.Files;

    /// <summary>Forgets what was replaced of a file, and versions of it that were refused.</summary>
    internal Refusal? Forget(string path) => Locked(path, () =>
    {
        History.Erase(path);
        Kept.Erase(path);
        return null;
    });

    /// <summary>Looks at the folder while no bench writes in it. Where nobody may write, nobody does.</summary>
    internal Refusal? Quiet(Action look)
    {
        if (!FolderLock.CanBeTaken(Aside))
        {
            look();
            return null;
        }

        return Locked("", () =>
        {
            look();
            return null;
        });
    }

    /// <summary>Removes what killed writers left half written; a folder that cannot be written has nothing of the kind.</summary>
    public void CleanUp() => Locked("", () =>
    {
        WholeFile.RemoveHalves(source.Folder);
        Kept.Settle();
        return null;
    });

    private Refusal? Changed(string path, Func<byte[], byte[]?> change)
    {
        Kept.Settle();
        for (var tries = 0; tries < MostTries; tries++)
        {
            if (Read(path) is not { } now)
                return WorkshopRefusals.NoteGone(path);
            if (change(now) is not { } bytes || bytes.AsSpan().SequenceEqual(now))
                return null;
            if (ReadBack.Refuses(path, now, bytes) is { } refused)
                return refused;
            if (WriteWhole(path, now, bytes))
                return null;
        }

        return WorkshopRefusals.KeepsChanging(path);
    }

    private Refusal? Locked(string path, Func<Refusal?> write)
    {
        try
        {
            if (!IsThere)
                return WorkshopRefusals.FolderGone(source.Folder);
            lock (writing)
            {
                if (OwnFiles(path).FirstOrDefault(f => InBook.At(source.Folder, f) is null) is { } link)
                    return WorkshopRefusals.LeadsOutside(link);
                using var held = FolderLock.Take(Aside, Patience);
                return held is null ? WorkshopRefusals.FolderBusy(source.Folder)
                    : InBook.At(source.Folder, path) != Absolute(path) ? WorkshopRefusals.LeadsOutside(path)
                    : write();
            }
        }
        catch (NotSafeOnDiskException e)
        {
            return WorkshopRefusals.NotSafeOnDisk(path, e);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return IsThere ? WorkshopRefusals.CannotWrite(source.Folder, e) : WorkshopRefusals.FolderGone(source.Folder);
        }
    }

    /// <summary>What is written beside a file.</summary>
    private static string[] OwnFiles(string path) => [".bench/lock", ".bench/kept", ".bench/ledger", $".bench/history/{path}.jsonl"];

    private bool Holds(string path, ReadOnlyMemory<byte> bytes) => Read(path) is { } now && bytes.Span.SequenceEqual(now);

    /// <summary>A file that went away a moment ago is often on its way back: some editors delete, then write anew.</summary>
    private bool IsBeingSaved(string path, TimeSpan waited) => Read(path) is null ? waited < SavedNow.Quiet : IsBeingSaved(path);

    /// <summary>What is replaced is kept before it goes; what was written is entered in the ledger after.</summary>
    /// <param name="was">What is replaced, null for a new file; when the file holds anything else nothing is written.</param>
    private bool WriteWhole(string path, ReadOnlyMemory<byte>? was, ReadOnlyMemory<byte> bytes)
    {
        if (was is { } before)
            History.Keep(path, new(clock.GetLocalNow(), before), Absolute(path));
        var overwritten = was is { } known ? Kept.Hold(path, known.Span) : null;
        var written = false;
        try
        {
            written = WholeFile.Write(Absolute(path), bytes, () => was is { } now ? Holds(path, now) : !File.Exists(Absolute(path)), Disk);
            if (written)
                Ledger.Wrote(path, bytes);
            return written;
        }
        finally
        {
            Kept.Look(overwritten, written);
        }
    }

    /// <summary>Paths never leave the folder.</summary>
    private string Absolute(string path) =>
        IsInside(path) ? Path.GetFullPath(Path.Combine(source.Folder, path)) : throw new ArgumentException($"{path} lies outside the book.", nameof(path));

    private bool IsInside(string path) => Path.GetFullPath(Path.Combine(source.Folder, path)) is var file
        && Path.TrimEndingDirectorySeparator(Path.GetFullPath(source.Folder)) is var root
        && (file == root || file.StartsWith(root + Path.DirectorySeparatorChar, StringComparison.Ordinal));
}
