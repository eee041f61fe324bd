using Microsoft.Win32.SafeHandles;

namespace Triage.Notes.Files;

/// <summary>Files of a book, reached without following a link out of it and without waiting for a pipe.</summary>
public static class InBook
{
    /// <summary>Where a path of a book leads. The book's own folder may be reached through a link: somebody chose it.</summary>
    /// <param name="path">Relative to the folder; empty for the folder itself. Nothing needs to be there.</param>
    /// <returns>Null when it lies outside, or a link stands on the way.</returns>
    public static string? At(string folder, string path)
    {
        var root = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
        var file = Path.GetFullPath(Path.Combine(root, path));
        if (file == root)
            return root;
        if (!file.StartsWith(root + Path.DirectorySeparatorChar, StringComparison.Ordinal))
            return null;
        for (var step = file; step.Length > root.Length; step = Path.GetDirectoryName(step)!)
        {
            if (IsLink(step))
                return null;
        }

        return file;
    }

    /// <summary>Opens a file for reading while others may write, rename and delete it.</summary>
    /// <exception cref="IOException">It is a pipe or the like, is gone, or cannot be opened.</exception>
    public static FileStream Open(string file)
    {
        var handle = Handle(file);
        try
        {
            var stream = new FileStream(handle, FileAccess.Read, bufferSize: 1);
            return stream.CanSeek ? stream : throw new IOException("It is a pipe, no file.");
        }
        catch
        {
            handle.Dispose();
            throw;
        }
    }

    /// <summary>All that a file holds.</summary>
    /// <exception cref="IOException">As for <see cref="Open"/>.</exception>
    public static byte[] ReadAll(string file)
    {
        using var stream = Open(file);
        using var all = new MemoryStream((int)Math.Min(stream.Length, Array.MaxLength));
        stream.CopyTo(all);
        return all.Capacity == all.Length ? all.GetBuffer() : all.ToArray();
    }

    private static bool IsLink(string path)
    {
        var entry = new FileInfo(path);
        return (int)entry.Attributes != -1 && entry.Attributes.HasFlag(FileAttributes.ReparsePoint);
    }

    /// <summary>Where opening failed, the class library says why.</summary>
    private static SafeFileHandle Handle(string file) =>
        OperatingSystem.IsLinux() && Posix.Open(file) is { } handle ? handle
        : File.OpenHandle(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
}
