using Microsoft.Win32.SafeHandles;
using Triage.Notes.Files;

namespace Triage.Workshop.Books;

/// <summary>What writing a file whole asks of the file system, step by step; derived ones fail, cut short or write down what they are asked.</summary>
internal class Disk
{
    public static Disk Real { get; } = new();

    public virtual void Write(SafeFileHandle file, ReadOnlySpan<byte> bytes) => RandomAccess.Write(file, bytes, 0);

    /// <summary>Waits until the file's content is on the disk.</summary>
    public virtual void Flush(SafeFileHandle file) => RandomAccess.FlushToDisk(file);

    /// <summary>In place of what has the name already.</summary>
    public virtual void Rename(string from, string to) => File.Move(from, to, overwrite: true);

    /// <summary>
    /// Waits until the names in a folder are on the disk: a new name that is only in memory is gone after a power cut, with the file behind it.
    /// Linux only; other systems offer no such call here, and nothing is done there.
    /// </summary>
    public virtual void FlushFolder(string folder)
    {
        if (OperatingSystem.IsLinux())
            Posix.FlushFolder(folder);
    }

    /// <summary>The folder and those above it that are missing, each on the disk before the next step.</summary>
    public void MakeFolder(string folder)
    {
        if (Directory.Exists(folder))
            return;
        if (Path.GetDirectoryName(folder) is { Length: > 0 } above)
        {
            MakeFolder(above);
            Directory.CreateDirectory(folder);
            FlushFolder(above);
        }
        else
        {
            Directory.CreateDirectory(folder);
        }
    }
}
