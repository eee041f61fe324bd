namespace Triage.Workshop.Books;

/// <summary>A file that appears whole or not at all, and stays when the power goes.</summary>
internal static class WholeFile
{
    private const string Half = ".half";

    /// <summary>Makes the folder, writes beside the file, flushes, reads it back, renames, and flushes the folder.</summary>
    /// <param name="still">Looked at last of all, just before the rename: false leaves the file as it is.</param>
    /// <returns>Whether it was written.</returns>
    /// <exception cref="NotSafeOnDiskException">It is in place, and the disk would not say that it is there to stay.</exception>
    public static bool Write(string file, ReadOnlyMemory<byte> bytes, Func<bool> still, Disk? disk = null)
    {
        disk ??= Disk.Real;
        var folder = Path.GetDirectoryName(Path.GetFullPath(file))!;
        var half = Path.Combine(folder, $".{Path.GetFileName(file)}.{Environment.ProcessId}{Half}");
        disk.MakeFolder(folder);
        try
        {
            Flushed(disk, half, bytes);
            KeepMode(file, half);
            if (!still())
            {
                File.Delete(half);
                return false;
            }

            disk.Rename(half, file);
        }
        catch
        {
            File.Delete(half);
            throw;
        }

        FlushName(disk, file, folder);
        return true;
    }

    /// <summary>For a file that is there already: killed before its flush, whoever wrote it may have left the name in memory only.</summary>
    public static void FlushName(string file, Disk disk) => FlushName(disk, file, Path.GetDirectoryName(file)!);

    /// <summary>Removes what killed writers left in a folder tree. Only under the folder's lock: then nobody is writing.</summary>
    public static void RemoveHalves(string folder)
    {
        var all = new EnumerationOptions { RecurseSubdirectories = true, IgnoreInaccessible = true, AttributesToSkip = FileAttributes.ReparsePoint };
        foreach (var half in Directory.EnumerateFiles(folder, $".*{Half}", all))
            File.Delete(half);
    }

    private static void FlushName(Disk disk, string file, string folder)
    {
        try
        {
            disk.FlushFolder(folder);
        }
        catch (IOException e)
        {
            throw new NotSafeOnDiskException(file, e);
        }
    }

    /// <summary>What has the name of the half is a killed writer's, or somebody's link or pipe: it is not written into.</summary>
    private static void Flushed(Disk disk, string half, ReadOnlyMemory<byte> bytes)
    {
        File.Delete(half);
        using (var handle = File.OpenHandle(half, FileMode.CreateNew, FileAccess.Write, FileShare.None, FileOptions.None, bytes.Length))
        {
            disk.Write(handle, bytes.Span);
            disk.Flush(handle);
        }

        if (!File.ReadAllBytes(half).AsSpan().SequenceEqual(bytes.Span))
            throw new IOException("The disk does not hold what was written.");
    }

    /// <summary>A note that only its owner may read stays so.</summary>
    private static void KeepMode(string file, string half)
    {
        if (!OperatingSystem.IsWindows() && File.Exists(file))
            File.SetUnixFileMode(half, File.GetUnixFileMode(file));
    }
}

/// <summary>A file was renamed into its place, but the disk would not say that the name is there to stay.</summary>
internal sealed class NotSafeOnDiskException(string file, IOException inner) : IOException(inner.Message, inner)
{
    public string File => file;
}
