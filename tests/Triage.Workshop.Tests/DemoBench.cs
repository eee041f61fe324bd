using System.Collections.Immutable;
using Microsoft.Extensions.Time.Testing;
using Triage.Workshop.Books;

namespace Triage.Workshop.Tests;

/// <summary>The common book, only read, and a copy of the demo book in a temporary folder, opened for real.</summary>
public sealed class DemoBench : IAsyncDisposable
{
    private DemoBench(string folder, string common, FakeTimeProvider clock, bool watch)
    {
        (Folder, Clock) = (folder, clock);
        Books = [new("demo", Path.Combine(folder, "demo"), Trust.Own, Writable: true), new("common", common)];
        Live = LiveBench.Open(new()
        {
            Books = Books,
            Clock = clock,
            Fits = SharedFits.OfAll,
            Watch = watch,
        });
    }

    public string Folder { get; }

    public ImmutableArray<BookSource> Books { get; }

    public FakeTimeProvider Clock { get; }

    public LiveBench Live { get; }

    /// <param name="prepare">Changes the copied book before it is opened.</param>
    public static DemoBench Open(bool watch = false, Action<string>? prepare = null)
    {
        var folder = Directory.CreateTempSubdirectory("bench-").FullName;
        BookCopy.All(Path.Combine(Knowledge, "demo"), Path.Combine(folder, "demo"));
        prepare?.Invoke(folder);
        return Open(folder, Path.Combine(Knowledge, "common"), watch);
    }

    /// <inheritdoc cref="BookCopy.OfClasses"/>
    public static DemoBench OpenSmall(bool watch = false, params ImmutableArray<string> classes)
    {
        var folder = Directory.CreateTempSubdirectory("bench-").FullName;
        BookCopy.OfClasses(Knowledge, folder, classes);
        return Open(folder, Path.Combine(folder, "common"), watch);
    }

    private static string Knowledge => Path.Combine(Repository.Root, "kb");

    private static DemoBench Open(string folder, string common, bool watch) =>
        new(folder, common, new FakeTimeProvider(new DateTimeOffset(2026, 11, 2, 9, 0, 0, TimeSpan.FromHours(1))), watch);

    public async ValueTask DisposeAsync()
    {
        await Live.DisposeAsync();
        if (Directory.Exists(Folder))
            Directory.Delete(Folder, recursive: true);
    }
}
