using Triage.Workshop.Steps;

namespace Triage.Workshop.Store;

/// <summary>
/// The folder of one book. Every write is whole or not at all: temporary file, flush, rename, under a lock that other
/// processes on the same folder respect. A file that changed since it was read is not overwritten; both versions are kept.
/// </summary>
/// <param name="source">Name, folder and trust.</param>
/// <param name="clock">Names the kept versions.</param>
public sealed class BookFolder(BookSource source, TimeProvider clock)
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    public BookSource Source => source;

    /// <summary>Where the bench keeps what is not a note: the lock, refused versions. Ignored by the note reader.</summary>
    private string Aside => Path.Combine(source.Folder, ".bench");

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
    public Refusal? Create(string path, ReadOnlyMemory<byte> bytes) => Locked(() =>
        File.Exists(Absolute(path))
            ? ChangedMeanwhile(path, bytes)
            : WriteWhole(path, bytes));

    /// <summary>Puts new bytes in place of the ones that were read.</summary>
    /// <param name="asRead">The file as it was when the person began; anything else on disk is somebody's newer work.</param>
    public Refusal? Replace(string path, ReadOnlyMemory<byte> asRead, ReadOnlyMemory<byte> bytes) => Locked(() =>
        Read(path) is { } now && asRead.Span.SequenceEqual(now)
            ? WriteWhole(path, bytes)
            : ChangedMeanwhile(path, bytes));

    /// <summary>Reads, changes and writes a note in one go under the lock, so that two writers' entries both stay.</summary>
    /// <param name="change">New bytes from the present ones; null means: leave it.</param>
    public Refusal? Change(string path, Func<byte[], byte[]?> change) => Locked(() =>
        Read(path) is not { } now ? new(RefusalKind.NotFound, $"{path} is no longer there.", "Look whether it was moved or deleted.")
        : change(now) is { } bytes && !bytes.AsSpan().SequenceEqual(now) ? WriteWhole(path, bytes)
        : null);

    private Refusal? Locked(Func<Refusal?> write)
    {
        try
        {
            if (!Directory.Exists(source.Folder))
                return WorkshopRefusals.FolderGone(source.Folder);
            using var held = FolderLock.Take(Aside, Patience, clock);
            return held is null ? WorkshopRefusals.FolderBusy(source.Folder) : write();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return WorkshopRefusals.CannotWrite(source.Folder, e);
        }
    }

    private Refusal? WriteWhole(string path, ReadOnlyMemory<byte> bytes)
    {
        var file = Absolute(path);
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        WholeFile.Write(file, bytes);
        return null;
    }

    private Refusal ChangedMeanwhile(string path, ReadOnlyMemory<byte> bytes)
    {
        var stamp = clock.GetUtcNow().ToString("yyyyMMdd-HHmmss-fff", System.Globalization.CultureInfo.InvariantCulture);
        var kept = Path.Combine(Aside, "kept", $"{Path.GetFileNameWithoutExtension(path)}.{stamp}.md");
        Directory.CreateDirectory(Path.GetDirectoryName(kept)!);
        WholeFile.Write(kept, bytes);
        return WorkshopRefusals.ChangedMeanwhile(path, Path.GetRelativePath(source.Folder, kept));
    }

    /// <summary>Paths never leave the folder.</summary>
    private string Absolute(string path)
    {
        var file = Path.GetFullPath(Path.Combine(source.Folder, path));
        var root = Path.GetFullPath(source.Folder) + Path.DirectorySeparatorChar;
        return file.StartsWith(root, StringComparison.Ordinal) ? file : throw new ArgumentException($"{path} lies outside the book.", nameof(path));
    }
}
