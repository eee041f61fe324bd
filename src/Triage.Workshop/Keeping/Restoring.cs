using Triage.Workshop.Books;

namespace Triage.Workshop.Keeping;

/// <summary>A backup put back into a folder of its own. All of it appears at once, or nothing does; nothing is ever overwritten.</summary>
public static class Restoring
{
    /// <param name="from">A backup's file.</param>
    /// <param name="into">A folder that is not there yet, or is empty.</param>
    public static RestoreResult Restore(string from, string into, IProgress<int>? progress = null, CancellationToken stop = default)
    {
        var folder = Path.TrimEndingDirectorySeparator(Path.GetFullPath(into));
        if (IsTaken(folder))
            return new() { Refused = KeepingTexts.PlaceTaken(into) };
        if (IsInBook(folder))
            return new() { Refused = KeepingTexts.InsideBook(into) };
        var half = Path.Combine(Path.GetDirectoryName(folder)!, $".{Path.GetFileName(folder)}.half");
        try
        {
            using var archive = Archive.Open(from);
            Remove(half);
            Directory.CreateDirectory(half);
            if (new DriveInfo(half).AvailableFreeSpace is var free && free < archive.Bytes)
                return new() { Refused = KeepingTexts.NoRoom(into, archive.Bytes, free) };
            Unpack(archive, half, progress, stop);
            if (Directory.Exists(folder))
                Directory.Delete(folder);
            Directory.Move(half, folder);
            Disk.Real.FlushFolder(Path.GetDirectoryName(folder)!);
            return new() { Folder = folder, Files = archive.Files.Length, Bytes = archive.Bytes };
        }
        catch (KeepingRefusedException e)
        {
            return new() { Refused = e.Refusal };
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new() { Refused = KeepingTexts.CannotWrite(into, e) };
        }
        finally
        {
            Remove(half);
        }
    }

    /// <summary>Whether a place lies in the folder of a book that was written to.</summary>
    internal static bool IsInBook(string place)
    {
        for (var above = Path.GetDirectoryName(place); above is not null; above = Path.GetDirectoryName(above))
        {
            if (Directory.Exists(Path.Combine(above, ".bench")))
                return true;
        }

        return false;
    }

    private static bool IsTaken(string folder) => Path.Exists(folder) && !(Directory.Exists(folder) && !Directory.EnumerateFileSystemEntries(folder).Any());

    private static void Unpack(Archive archive, string half, IProgress<int>? progress, CancellationToken stop)
    {
        for (var at = 0; at < archive.Files.Length; at++)
        {
            stop.ThrowIfCancellationRequested();
            var entry = archive.Files[at];
            var file = Path.Combine(half, Archive.PathOf(entry));
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
            if (!OperatingSystem.IsWindows() && Archive.ModeOf(entry) is { } mode)
                options.UnixCreateMode = mode | UnixFileMode.UserRead | UnixFileMode.UserWrite;
            using (var stream = new FileStream(file, options))
            {
                archive.Copy(entry, stream);
                stream.Flush(flushToDisk: true);
            }

            File.SetLastWriteTime(file, entry.LastWriteTime.LocalDateTime);
            progress?.Report(at + 1);
        }

        foreach (var folder in Directory.EnumerateDirectories(half, "*", new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = 0 }).Append(half))
            Disk.Real.FlushFolder(folder);
    }

    private static void Remove(string half)
    {
        if (Directory.Exists(half))
            Directory.Delete(half, recursive: true);
    }
}

/// <summary>What was restored.</summary>
public sealed record RestoreResult
{
    public int Files { get; init; }

    public long Bytes { get; init; }

    /// <summary>Where the book stands now; null when refused.</summary>
    public string? Folder { get; init; }

    public Refusal? Refused { get; init; }
}
