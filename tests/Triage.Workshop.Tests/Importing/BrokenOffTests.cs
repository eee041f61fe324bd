using System.Globalization;
using Triage.Workshop.Exchange.Importing;
using Xunit;

namespace Triage.Workshop.Tests.Importing;

public sealed class BrokenOffTests : IDisposable
{
    private static readonly ColumnMap Map = Table.Map("""{ "id": { "prefix": "old-" }, "class": { "id": "radio-set", "name": "Radio set" }, "closed": { "fixed": "2001-02-03" }, "cause": "cause", "others": "finding" }""");

    private readonly Table table = new();

    public void Dispose() => table.Dispose();

    [Fact]
    public void KilledInTheMiddle_ShowsNothing_AndGoesOnWhereItWas()
    {
        table.With(Rows(2500));
        Break();
        Assert.DoesNotContain(table.Read().Notes, n => n.Id.StartsWith("old-", StringComparison.Ordinal));
        var staged = Directory.GetDirectories(Path.Combine(table.Imported, ".old-jobs.staging", "jobs")).Single(d => !Path.GetFileName(d).StartsWith('.'));
        var written = File.GetLastWriteTimeUtc(Path.Combine(staged, "old-00001.md"));
        Directory.CreateDirectory(Path.Combine(table.Imported, ".old-jobs.staging", "jobs", ".0002.half"));
        File.WriteAllText(Path.Combine(table.Imported, ".old-jobs.staging", "jobs", ".0002.half", "old-01001.md"), "---\nformat: 1\nki");

        var result = table.BringIn(Map);

        Assert.Equal((LeftOver.Continued, 2500), (result.Found, result.Jobs));
        Assert.Equal(written, File.GetLastWriteTimeUtc(Path.Combine(result.Place!, "jobs", "0001", "old-00001.md")));
        Assert.Equal(2500, table.Read().Notes.Count(n => n.Id.StartsWith("old-", StringComparison.Ordinal)));
        Assert.Empty(table.Read().Problems);
        Assert.Empty(Directory.GetDirectories(table.Imported, ".*"));
    }

    [Fact]
    public void LeftOverOfAnotherTable_IsCleared()
    {
        table.With(Rows(2500));
        Break();
        table.With(Rows(1200));

        var result = table.BringIn(Map);

        Assert.Equal((LeftOver.Cleared, 1200), (result.Found, result.Jobs));
        Assert.Equal(1200, table.Read().Notes.Count(n => n.Id.StartsWith("old-", StringComparison.Ordinal)));
    }

    [Fact]
    public void ContinuedRun_WritesTheSameNotesAsOneThatWasNotBrokenOff()
    {
        table.With(Rows(1200));
        Break();
        table.BringIn(Map);
        using var whole = new Table().With(Rows(1200));

        whole.BringIn(Map);

        Assert.Equal(whole.Files().OrderBy(f => f.Key, StringComparer.Ordinal), table.Files().OrderBy(f => f.Key, StringComparer.Ordinal));
    }

    /// <summary>Stops after the first folder of jobs, leaving what a killed process leaves.</summary>
    private void Break()
    {
        using var stop = new CancellationTokenSource();
        Assert.Throws<OperationCanceledException>(() => Import.Run(table.File, Map, table.Book, new Stopper(stop), stop: stop.Token));
    }

    private static string Rows(int count) =>
        "cause,hum,lamp\n" + string.Concat(Enumerable.Range(0, count).Select(i => string.Create(CultureInfo.InvariantCulture, $"cause {i % 7},{i % 3},{(i % 5 == 0 ? "" : i % 2)}\n")));

    private sealed class Stopper(CancellationTokenSource stop) : IProgress<ImportProgress>
    {
        public void Report(ImportProgress value) => stop.Cancel();
    }
}
