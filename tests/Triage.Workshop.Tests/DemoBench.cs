using System.Collections.Immutable;
using Microsoft.Extensions.Time.Testing;
using Triage.Workshop.Books;

namespace Triage.Workshop.Tests;

/// <summary>The common book and a copy of the demo book in a temporary folder, opened for real.</summary>
public sealed class DemoBench : IAsyncDisposable
{
    private DemoBench(string folder, FakeTimeProvider clock, bool watch)
    {
        (Folder, Clock) = (folder, clock);
        Live = LiveBench.Open(new()
        {
            Books = Books,
            Clock = clock,
            Fits = new(Path.Combine(Path.GetTempPath(), "triage-fits-of-tests")),
            Watch = watch,
        });
    }

    public string Folder { get; }

    public ImmutableArray<BookSource> Books => [new("demo", Path.Combine(Folder, "demo"), Trust.Own, Writable: true), new("common", Path.Combine(Folder, "common"))];

    public FakeTimeProvider Clock { get; }

    public LiveBench Live { get; }

    /// <param name="prepare">Changes the copied books before they are opened.</param>
    public static DemoBench Open(bool watch = false, Action<string>? prepare = null)
    {
        var folder = Directory.CreateTempSubdirectory("bench-").FullName;
        foreach (var book in new[] { "common", "demo" })
            Copy(Path.Combine(Repository.Root, "kb", book), Path.Combine(folder, book));
        prepare?.Invoke(folder);
        return new(folder, new FakeTimeProvider(new DateTimeOffset(2026, 11, 2, 9, 0, 0, TimeSpan.FromHours(1))), watch);
    }

    private static void Copy(string from, string to)
    {
        foreach (var file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }
    }

    public async ValueTask DisposeAsync()
    {
        await Live.DisposeAsync();
        if (Directory.Exists(Folder))
            Directory.Delete(Folder, recursive: true);
    }
}
