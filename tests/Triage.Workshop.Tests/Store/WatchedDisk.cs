using Microsoft.Win32.SafeHandles;
using Triage.Workshop.Books;

namespace Triage.Workshop.Tests.Store;

/// <summary>The real disk; what is asked of it is written down, and at one of the calls it may fail.</summary>
/// <param name="book">Paths are said relative to it.</param>
internal sealed class WatchedDisk(string book) : Disk
{
    public List<string> Asked { get; } = [];

    /// <summary>Calls that fail: the beginning of what would be written down.</summary>
    public string? Fails { get; set; }

    /// <summary>Says that it wrote, and wrote only the first half.</summary>
    public bool Short { get; set; }

    public override void Write(SafeFileHandle file, ReadOnlySpan<byte> bytes)
    {
        Ask("write");
        base.Write(file, Short ? bytes[..(bytes.Length / 2)] : bytes);
    }

    public override void Flush(SafeFileHandle file)
    {
        Ask("flush");
        base.Flush(file);
    }

    public override void Rename(string from, string to)
    {
        Ask($"rename to {Path.GetRelativePath(book, to)}");
        base.Rename(from, to);
    }

    public override void FlushFolder(string folder)
    {
        Ask($"flush folder {Path.GetRelativePath(book, folder)}");
        base.FlushFolder(folder);
    }

    private void Ask(string what)
    {
        Asked.Add(what);
        if (Fails is { } fails && what.StartsWith(fails, StringComparison.Ordinal))
            throw new IOException("Input/output error");
    }
}
