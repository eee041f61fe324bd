using System.Threading.Channels;

namespace Triage.Workshop.Store;

/// <summary>
/// Tells which notes of a folder changed, gathered over a short quiet time. A watcher that overflows or fails, or a folder
/// that vanishes and returns, asks for a rescan: nothing is missed, some of it is only seen later.
/// </summary>
public sealed class FolderWatch : IDisposable
{
    private static readonly TimeSpan Quiet = TimeSpan.FromMilliseconds(40);

    private readonly FileSystemWatcher watcher;
    private readonly Channel<string?> events = Channel.CreateUnbounded<string?>();

    public FolderWatch(string folder)
    {
        watcher = new(folder) { IncludeSubdirectories = true, InternalBufferSize = 64 * 1024 };
        watcher.Changed += (_, e) => events.Writer.TryWrite(e.FullPath);
        watcher.Created += (_, e) => events.Writer.TryWrite(e.FullPath);
        watcher.Deleted += (_, e) => events.Writer.TryWrite(e.FullPath);
        watcher.Renamed += (_, e) =>
        {
            events.Writer.TryWrite(e.OldFullPath);
            events.Writer.TryWrite(e.FullPath);
        };
        watcher.Error += (_, _) => events.Writer.TryWrite(null);
        watcher.EnableRaisingEvents = true;
    }

    /// <summary>Batches of changed files, absolute paths; a null batch means: rescan the whole folder.</summary>
    public async IAsyncEnumerable<IReadOnlySet<string>?> Batches([System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken stop)
    {
        while (await events.Reader.WaitToReadAsync(stop))
        {
            await Task.Delay(Quiet, stop);
            var changed = new HashSet<string>(StringComparer.Ordinal);
            var overflowed = false;
            while (events.Reader.TryRead(out var path))
            {
                if (path is null || IsFolder(path))
                    overflowed = true;
                else if (path.EndsWith(".md", StringComparison.OrdinalIgnoreCase) && !Path.GetFileName(path).StartsWith('.'))
                    changed.Add(path);
            }

            if (overflowed)
                yield return null;
            else if (changed.Count > 0)
                yield return changed;
        }
    }

    /// <summary>A folder moved, renamed or deleted takes notes with it that have no events of their own.</summary>
    private static bool IsFolder(string path) => !Path.HasExtension(path) && !Path.GetFileName(path).Equals("lock", StringComparison.Ordinal) && !path.Contains("/.", StringComparison.Ordinal);

    public void Dispose()
    {
        watcher.Dispose();
        events.Writer.TryComplete();
    }
}
