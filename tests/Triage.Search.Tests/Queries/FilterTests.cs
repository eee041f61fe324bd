using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Search.Queries;

namespace Triage.Search.Tests.Queries;

public sealed class FilterTests : IDisposable
{
    private readonly NoteIndex index = ManyJobs(400, seed: 7);

    public void Dispose() => index.Dispose();

    public static TheoryData<string, string[], string[], string[]> Questions => new()
    {
        { "", [], [], [] },
        { "display", [], [], [] },
        { "display", ["mended"], [], [] },
        { "display sound", ["mended", "open"], ["corvane-k61"], [] },
        { "blank", ["unsolved"], [], ["display=blank", "sound"] },
        { "blank", ["no-such-outcome"], [], [] },
    };

    [Theory]
    [MemberData(nameof(Questions))]
    public void CountOfAValue_IsTheTotalWhenItAloneIsChosen(string text, string[] outcomes, string[] devices, string[] findings)
    {
        var query = new SearchQuery(text) { Outcomes = [.. outcomes], Devices = [.. devices], Findings = [.. findings] };
        var counts = index.Find(query).Counts;
        Assert.All(counts["outcome"], c => Assert.Equal(c.Count, index.Find(query with { Outcomes = [c.Value] }).Total));
        Assert.All(counts["device"], c => Assert.Equal(c.Count, index.Find(query with { Devices = [c.Value] }).Total));
        Assert.All(counts["finding"], c => Assert.Equal(c.Count, index.Find(query with { Findings = [c.Value] }).Total));
        Assert.All(counts["cause"], c => Assert.Equal(c.Count, index.Find(query with { Causes = [c.Value] }).Total));
        Assert.All(counts["kind"], c => Assert.Equal(c.Count, index.Find(query with { Kinds = [c.Value] }).Total));
    }

    [Fact]
    public void CountsOfAFilterThatEveryNoteHas_AddUpToTheTotal()
    {
        var results = index.Find(new SearchQuery("display"));
        Assert.Equal(results.Total, results.Counts["kind"].Sum(c => c.Count));
        var jobs = index.Find(new SearchQuery("display") { Kinds = ["job"] });
        Assert.Equal(jobs.Total, jobs.Counts["outcome"].Sum(c => c.Count));
    }

    [Fact]
    public void EveryHit_PassesTheFilters()
    {
        var query = new SearchQuery("display") { Outcomes = ["mended"], Devices = ["orlin-88"], Take = 500 };
        var results = index.Find(query);
        Assert.NotEmpty(results.Hits);
        Assert.Equal(results.Total, results.Hits.Length);
        Assert.All(results.Hits, h => Assert.Equal("mended", h.Outcome));
    }

    [Fact]
    public void AlternativesOfOneFilter_AddUp()
    {
        int Total(params string[] outcomes) => index.Find(new SearchQuery("") { Outcomes = [.. outcomes] }).Total;
        Assert.Equal(Total("mended") + Total("unsolved"), Total("mended", "unsolved"));
    }

    /// <summary>Put in three batches, so that the index has several segments.</summary>
    private static NoteIndex ManyJobs(int count, int seed)
    {
        var random = new Random(seed);
        string[] values = ["display=blank", "display=normal", "sound=none", "sound=normal", "hum=yes"];
        string[] words = ["display", "sound", "blank", "hums", "lamp", "keys"];
        JobOutcome?[] outcomes = [JobOutcome.Mended, JobOutcome.Unsolved, JobOutcome.PartedOut, null];
        var index = NoteIndex.InMemory();
        foreach (var batch in Enumerable.Range(0, count).Select(Job).Chunk((count / 3) + 1))
        {
            Shelf.Fill(index, [.. batch]);
        }

        return index;

        Note Job(int i) => Shelf.Job(
            $"job-{i}",
            $"Job {i}",
            random.Next(2) == 0 ? "corvane-k61" : "orlin-88",
            string.Join(' ', random.GetItems(words, 4)),
            1 + random.Next(28),
            outcomes[random.Next(outcomes.Length)],
            [.. random.GetItems(values, 2).Distinct()]) with
        {
            Causes = random.Next(2) == 0 ? [] : ImmutableArray.Create(new FoundCause($"fault-{random.Next(3)}", Grade.Told)),
        };
    }
}
