using System.Runtime.CompilerServices;
using System.Threading.Channels;

namespace Triage.Workshop.Books;

/// <summary>
/// Tells what changed in a folder, gathered over a short quiet time. A watcher that overflows or fails, or a folder
/// that vanishes and returns, asks for a rescan: nothing is missed, some of it is only seen later.
/// </summary>
public sealed class FolderWatch : IDisposable
{
    private static readonly TimeSpan Quiet = TimeSpan.FromMilliseconds(40);

    /// <summary>How often it is looked whether the folder itself is still there.</summary>
    private static readonly TimeSpan Round = TimeSpan.FromMilliseconds(500);

    /// <summary>Rounds between rescans of a folder that the system will not watch (its limit of watches reached).</summary>
    private const int RoundsUnwatched = 20;

    /// <summary>Stands for the folder as a whole, among the paths below it.</summary>
    private const string Everything = "";

    private readonly string folder;
    private readonly Channel<string> events = Channel.CreateUnbounded<string>();
    private readonly FileSystemWatcher? above;
    private FileSystemWatcher? watcher;
    private volatile bool moved;

    public FolderWatch(string folder)
    {
        this.folder = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
        above = Path.GetDirectoryName(this.folder) is { } parent ? Started(() => Above(parent)) : null;
        watcher = Started(Within);
    }

    /// <summary>Batches of what changed: paths of files and folders relative to this one, with forward slashes; an empty path means all of it.</summary>
    public async IAsyncEnumerable<IReadOnlySet<string>> Batches([EnumeratorCancellation] CancellationToken stop)
    {
        using var timer = new PeriodicTimer(Round);
        var round = timer.WaitForNextTickAsync(stop).AsTask();
        var unwatched = 0;
        while (!stop.IsCancellationRequested)
        {
            var told = events.Reader.WaitToReadAsync(stop).AsTask();
            await Task.WhenAny(told, round);
            if (round.IsCompleted)
            {
                await round;
                round = timer.WaitForNextTickAsync(stop).AsTask();
                unwatched = watcher is null ? unwatched + 1 : 0;
            }

            if (ComesBack() || unwatched >= RoundsUnwatched)
            {
                unwatched = 0;
                events.Writer.TryWrite(Everything);
            }

            if (!told.IsCompleted)
                continue;
            await Task.Delay(Quiet, stop);
            if (Told() is { Count: > 0 } changed && Directory.Exists(folder))
                yield return changed;
        }
    }

    public void Dispose()
    {
        above?.Dispose();
        watcher?.Dispose();
        events.Writer.TryComplete();
    }

    private HashSet<string> Told()
    {
        var changed = new HashSet<string>(StringComparer.Ordinal);
        while (events.Reader.TryRead(out var path))
            changed.Add(path);
        return changed.Contains(Everything) ? [Everything] : changed;
    }

    /// <summary>Lets go of a folder that is gone; watches it again, or the other one in its place, once there is one.</summary>
    private bool ComesBack()
    {
        if (moved || !Directory.Exists(folder))
        {
            moved = false;
            watcher?.Dispose();
            watcher = null;
        }

        if (watcher is not null || !Directory.Exists(folder))
            return false;
        watcher = Started(Within);
        return watcher is not null;
    }

    private FileSystemWatcher Within()
    {
        var within = new FileSystemWatcher(folder) { IncludeSubdirectories = true, InternalBufferSize = 64 * 1024 };
        within.Changed += (_, e) => Tell(e.FullPath);
        within.Created += (_, e) => Tell(e.FullPath);
        within.Deleted += (_, e) => Tell(e.FullPath);
        within.Renamed += (_, e) =>
        {
            Tell(e.OldFullPath);
            Tell(e.FullPath);
        };
        within.Error += (_, _) => events.Writer.TryWrite(Everything);
        return within;
    }

    private FileSystemWatcher Above(string parent)
    {
        var above = new FileSystemWatcher(parent, Path.GetFileName(folder)) { NotifyFilter = NotifyFilters.DirectoryName };
        above.Created += (_, _) => Moved();
        above.Deleted += (_, _) => Moved();
        above.Renamed += (_, _) => Moved();
        return above;
    }

    private void Moved()
    {
        moved = true;
        events.Writer.TryWrite(Everything);
    }

    /// <summary>Null when the folder is gone, or the system gives no more watches.</summary>
    private static FileSystemWatcher? Started(Func<FileSystemWatcher> make)
    {
        FileSystemWatcher? made = null;
        try
        {
            made = make();
            made.EnableRaisingEvents = true;
            return made;
        }
        catch (Exception e) when (e is IOException or ArgumentException or UnauthorizedAccessException)
        {
            made?.Dispose();
            return null;
        }
    }

    /// <summary>What lies in a hidden folder, or is hidden itself, is no note: the lock, halves of files, an editor's own.</summary>
    private void Tell(string path)
    {
        var relative = Path.GetRelativePath(folder, path).Replace('\\', '/');
        if (!relative.Split('/').Any(name => name.StartsWith('.')))
            events.Writer.TryWrite(relative);
    }
}
