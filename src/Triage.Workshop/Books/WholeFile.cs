namespace Triage.Workshop.Books;

/// <summary>A file that appears whole or not at all.</summary>
internal static class WholeFile
{
    private const string Half = ".half";

    /// <summary>Writes beside the file, flushes, and renames.</summary>
    /// <param name="still">Looked at last of all, just before the rename: false leaves the file as it is.</param>
    /// <returns>Whether it was written.</returns>
    public static bool Write(string file, ReadOnlyMemory<byte> bytes, Func<bool> still)
    {
        var half = Path.Combine(Path.GetDirectoryName(file)!, $".{Path.GetFileName(file)}.{Environment.ProcessId}{Half}");
        try
        {
            Flushed(half, bytes);
            KeepMode(file, half);
            if (still())
            {
                File.Move(half, file, overwrite: true);
                return true;
            }

            File.Delete(half);
            return false;
        }
        catch
        {
            File.Delete(half);
            throw;
        }
    }

    /// <summary>Removes what killed writers left in a folder tree. Only under the folder's lock: then nobody is writing.</summary>
    public static void RemoveHalves(string folder)
    {
        var all = new EnumerationOptions { RecurseSubdirectories = true, IgnoreInaccessible = true, AttributesToSkip = FileAttributes.ReparsePoint };
        foreach (var half in Directory.EnumerateFiles(folder, $".*{Half}", all))
            File.Delete(half);
    }

    private static void Flushed(string file, ReadOnlyMemory<byte> bytes)
    {
        using var handle = File.OpenHandle(file, FileMode.Create, FileAccess.Write, FileShare.None, FileOptions.None, bytes.Length);
        RandomAccess.Write(handle, bytes.Span, 0);
        RandomAccess.FlushToDisk(handle);
    }

    /// <summary>A note that only its owner may read stays so.</summary>
    private static void KeepMode(string file, string half)
    {
        if (!OperatingSystem.IsWindows() && File.Exists(file))
            File.SetUnixFileMode(half, File.GetUnixFileMode(file));
    }
}
