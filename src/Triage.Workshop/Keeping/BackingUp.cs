using System.Collections.Immutable;
using System.IO.Compression;
using Triage.Workshop.Books;
using Triage.Workshop.Exchange;

namespace Triage.Workshop.Keeping;

/// <summary>A whole book in one file: an ordinary zip with the book in a folder, and a checksum for every file of it.</summary>
public static class BackingUp
{
    /// <summary>
    /// Pictures and whatever else the bench never changes are packed first, while work goes on; notes, settings, history and what came meanwhile
    /// under the folder's lock, so that they belong to one moment. The finished file is read back before it gets its name.
    /// </summary>
    /// <param name="to">A file that is not there yet, outside of the book.</param>
    public static BackupResult BackUp(BookSource book, string to, TimeProvider clock, IProgress<int>? progress = null, CancellationToken stop = default)
    {
        var file = Path.GetFullPath(to);
        if (Path.Exists(file))
            return new() { Refused = KeepingTexts.PlaceTaken(to) };
        if (Restoring.IsInBook(file) || file.StartsWith(Path.TrimEndingDirectorySeparator(Path.GetFullPath(book.Folder)) + Path.DirectorySeparatorChar, StringComparison.Ordinal))
            return new() { Refused = KeepingTexts.InsideBook(to) };
        var half = Path.Combine(Path.GetDirectoryName(file)!, $".{Path.GetFileName(file)}.half");
        try
        {
            File.Delete(half);
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            var packed = Pack(book, half, clock, progress, stop);
            if (packed.Refused is not null)
                return packed;
            ReadBack(half, stop);
            File.Move(half, file, overwrite: false);
            Disk.Real.FlushFolder(Path.GetDirectoryName(file)!);
            return packed with { File = file, Packed = new FileInfo(file).Length };
        }
        catch (KeepingRefusedException e)
        {
            return new() { Refused = e.Refusal };
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new() { Refused = KeepingTexts.CannotWrite(to, e) };
        }
        finally
        {
            Remove(half);
        }
    }

    private static BackupResult Pack(BookSource book, string half, TimeProvider clock, IProgress<int>? progress, CancellationToken stop)
    {
        using var file = new FileStream(half, Owned(FileMode.CreateNew));
        using var zip = new ZipArchive(file, ZipArchiveMode.Create, leaveOpen: true);
        var packing = new Packing(book.Folder, zip, progress, stop);
        packing.Add(BookFiles.In(book.Folder).Paths.Where(IsSettled));
        var left = ImmutableArray<LeftOut>.Empty;
        var refused = new BookFolder(book, clock).Quiet(() =>
        {
            var files = BookFiles.In(book.Folder);
            left = files.LeftOut;
            packing.Add(files.Paths);
        });
        packing.Finish();
        zip.Dispose();
        file.Flush(flushToDisk: true);
        return new() { Files = packing.Files, Bytes = packing.Bytes, LeftOut = left, Unread = [.. packing.Unread], Refused = refused };
    }

    /// <summary>What the bench writes once and never changes.</summary>
    private static bool IsSettled(string path) =>
        !path.EndsWith(".md", StringComparison.OrdinalIgnoreCase) && !path.EndsWith(".yaml", StringComparison.OrdinalIgnoreCase) && !path.StartsWith(".bench/", StringComparison.Ordinal);

    private static void ReadBack(string half, CancellationToken stop)
    {
        using var archive = Archive.Open(half);
        foreach (var file in archive.Files)
        {
            stop.ThrowIfCancellationRequested();
            archive.Copy(file, Stream.Null);
        }
    }

    /// <summary>It holds names and numbers of owners.</summary>
    private static FileStreamOptions Owned(FileMode mode)
    {
        var options = new FileStreamOptions { Mode = mode, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        return options;
    }

    private static void Remove(string half)
    {
        try
        {
            File.Delete(half);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // said already that nothing can be written there
        }
    }
}

/// <summary>What was backed up.</summary>
public sealed record BackupResult
{
    public int Files { get; init; }

    /// <summary>Of the files as they are.</summary>
    public long Bytes { get; init; }

    /// <summary>Of the backup.</summary>
    public long Packed { get; init; }

    /// <summary>What lies in the folder and not in the backup.</summary>
    public ImmutableArray<LeftOut> LeftOut { get; init; } = [];

    /// <summary>What could not be read, and so is missing in it.</summary>
    public ImmutableArray<LeftOut> Unread { get; init; } = [];

    /// <summary>Where it stands; null when refused.</summary>
    public string? File { get; init; }

    public Refusal? Refused { get; init; }
}
