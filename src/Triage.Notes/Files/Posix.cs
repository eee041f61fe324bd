using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace Triage.Notes.Files;

/// <summary>The three calls of the system's own library that the class library has no name for (POSIX.1-2017).</summary>
internal static partial class Posix
{
    private const int NonBlocking = 0x800, CloseOnExec = 0x80000;

    /// <summary>EIO, ENOSPC and EDQUOT: the disk could not. Anything else says that this file system flushes no folders.</summary>
    private static readonly int[] Failed = [5, 28, 122];

    /// <summary>Opens for reading without waiting for whoever writes into a pipe. Linux only: the numbers of the flags are its.</summary>
    /// <returns>Null when it cannot be opened.</returns>
    public static SafeFileHandle? Open(string path)
    {
        var handle = new SafeFileHandle(Open(path, NonBlocking | CloseOnExec), ownsHandle: true);
        if (!handle.IsInvalid)
            return handle;
        handle.Dispose();
        return null;
    }

    /// <summary>Waits until the names in a folder are on the disk; nothing where the file system does not offer it.</summary>
    /// <exception cref="IOException">The disk could not.</exception>
    public static void FlushFolder(string folder)
    {
        using var handle = Open(folder);
        if (handle is not null && Flush(handle) != 0 && Failed.Contains(Marshal.GetLastPInvokeError()))
            throw new IOException($"{Marshal.GetLastPInvokeErrorMessage()}: {folder}");
    }

    /// <summary>A second name for a file.</summary>
    /// <returns>Whether the file system gave it one.</returns>
    public static bool Link(string file, string name) => LinkFile(file, name) == 0;

    [LibraryImport("libc", EntryPoint = "open", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int Open(string path, int flags);

    [LibraryImport("libc", EntryPoint = "fsync", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int Flush(SafeFileHandle file);

    [LibraryImport("libc", EntryPoint = "link", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int LinkFile(string file, string name);
}
