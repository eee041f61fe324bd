using Triage.Search.Indexing;
using Triage.Search.Queries;

namespace Triage.Search.Tests.Indexing;

/// <summary>An index large enough to be filled and searched in parts, against what the notes themselves say.</summary>
[Trait("run", "long")]
public sealed class LargeIndexTests : IDisposable
{
    private static readonly string[] Outcomes = ["mended", "unsolved", "open"];
    private static readonly IndexedNote[] Notes = [.. Enumerable.Range(0, 24_000).Select(Note)];

    private readonly NoteIndex index = NoteIndex.InMemory();

    public LargeIndexTests()
    {
        index.AddAll(Notes, n => n);
        index.Refresh();
    }

    [Fact]
    public void Counts_AreThoseOfAllParts()
    {
        using var searcher = index.OpenSearcher();
        var results = searcher.Search(new("hum") { Devices = ["d3"] });
        var hum = Notes.Where(n => n.Body.Contains("hum", StringComparison.Ordinal)).ToList();
        Assert.Equal(hum.Count(n => n.DeviceIds.Contains("d3")), results.Total);
        Assert.Equal(Counted(hum, n => n.DeviceIds[0]), results.Counts["device"]);
        Assert.Equal(Counted(hum.Where(n => n.DeviceIds.Contains("d3")), n => n.Outcome!), results.Counts["outcome"]);
    }

    [Fact]
    public void ValueThatNoNoteHas_LetsNothingThrough()
    {
        using var searcher = index.OpenSearcher();
        Assert.Equal(0, searcher.Search(new("hum") { Devices = ["no-such-device"] }).Total);
    }

    [Fact]
    public void EqualNotes_StandInTheOrderInWhichTheyWereFiled()
    {
        using var searcher = index.OpenSearcher();
        var expected = Notes.Where(n => n.Body == "hum" && n.Hold is Hold.Held).Take(300).Select(n => n.Id);
        Assert.Equal(expected, searcher.Search(new("hum") { Take = 300 }).Hits.Select(h => h.Id));
    }

    [Fact]
    public void Date_SortsAcrossParts()
    {
        using var searcher = index.OpenSearcher();
        var expected = Notes.Where(n => n.Body == "hum").OrderByDescending(n => n.Date).Select(n => n.Id).Skip(20).Take(10);
        Assert.Equal(expected, searcher.Search(new("hum") { Sort = SearchSort.Date, Skip = 20 }).Hits.Select(h => h.Id));
    }

    [Fact]
    public void NoteThatChanged_IsCountedOnce()
    {
        index.Put(Notes[0] with { Body = "crackle", Outcome = "worked-around" });
        index.Refresh();
        using var searcher = index.OpenSearcher();
        Assert.Equal(1, searcher.Search(new("crackle")).Total);
        Assert.Equal(Notes.Length, searcher.Search(new("")).Total);
        Assert.Contains(new("worked-around", 1), searcher.Search(new("")).Counts["outcome"]);
    }

    public void Dispose() => index.Dispose();

    private static IndexedNote Note(int i) => new($"job-{i}", "job", $"machine {i}")
    {
        Body = i % 3 == 0 ? "hum" : "click",
        DeviceIds = [$"d{i % 7}"],
        Outcome = Outcomes[i / 7 % 3],
        Hold = i % 2 == 0 ? Hold.Held : Hold.NotMended,
        Date = new DateTimeOffset(2020, 1, 1, 0, 0, 0, TimeSpan.Zero).AddMinutes(i * 7919 % 24_000),
    };

    private static IEnumerable<ValueCount> Counted(IEnumerable<IndexedNote> notes, Func<IndexedNote, string> value) =>
        notes.CountBy(value).Select(c => new ValueCount(c.Key, c.Value)).OrderByDescending(c => c.Count).ThenBy(c => c.Value, StringComparer.Ordinal);
}
