namespace Triage.Workshop.Books;

/// <summary>One writer at a time in a folder, between processes too. The system lets go of it when its holder dies.</summary>
public sealed class FolderLock : IDisposable
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(10);

    /// <summary>EROFS on Unix.</summary>
    private const int ReadOnlyDisk = 30;

    private readonly FileStream held;

    private FolderLock(FileStream held) => this.held = held;

    /// <summary>Null when another process holds it for longer than one is willing to wait.</summary>
    /// <exception cref="UnauthorizedAccessException">The folder is read-only.</exception>
    public static FolderLock? Take(string folder, TimeSpan patience)
    {
        Directory.CreateDirectory(folder);
        for (var waited = TimeSpan.Zero; waited <= patience; waited += Pause)
        {
            try
            {
                return new(new FileStream(Path.Combine(folder, "lock"), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None));
            }
            catch (IOException e) when (IsHeld(e))
            {
                Thread.Sleep(Pause);
            }
        }

        return null;
    }

    /// <summary>False on a disk that is mounted for reading only, or in somebody else's folder.</summary>
    public static bool CanBeTaken(string folder)
    {
        try
        {
            Directory.CreateDirectory(folder);
            using var file = new FileStream(Path.Combine(folder, "lock"), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.ReadWrite);
            return true;
        }
        catch (UnauthorizedAccessException)
        {
            return false;
        }
        catch (IOException e)
        {
            return (e.HResult & 0xFFFF) != ReadOnlyDisk;
        }
    }

    public void Dispose() => held.Dispose();

    /// <summary>EWOULDBLOCK on Unix, a sharing violation on Windows; other errors (disk full) are not a matter of waiting.</summary>
    private static bool IsHeld(IOException e) => (e.HResult & 0xFFFF) is 11 or 32 or 33 or 35;
}
