using Triage.Notes.Kinds;
using Triage.Search.Queries;

namespace Triage.Search.Tests.Queries;

/// <summary>What helps somebody to find: words half typed or misspelt, notes like another, what held most often.</summary>
public sealed class FindingTests : IDisposable
{
    private readonly Triage.Search.NoteIndex index = Shelf.Index();

    public void Dispose() => index.Dispose();

    [Fact]
    public void Misspelling_IsAnsweredAndPutRight()
    {
        var found = index.Find("blank dispaly");
        Assert.Equal("blank display", found.DidYouMean);
        Assert.Contains(found.Hits, h => h.Id == "2024-018");
    }

    [Theory]
    [InlineData("blank display")]
    [InlineData("HD-44781")]
    [InlineData("xylophonists")]
    public void KnownWordsMarkingsAndWordsNearNothing_AreLeftAlone(string text) => Assert.Null(index.Find(text).DidYouMean);

    [Fact]
    public void BeginningOfAWord_FindsWhatGoesOnFromIt()
    {
        Assert.Contains(index.Find(new SearchQuery("capaci") { Unfinished = true }).Hits, h => h.Id == "backup-capacitor");
        Assert.Contains(index.Find(new SearchQuery("orlin sile") { Unfinished = true }).Hits, h => h.Id == "2024-019");
    }

    [Fact]
    public void NotesLikeAJob_ShareItsWordsAndAreNotItself()
    {
        var found = index.Find(new SearchQuery("") { Like = "2024-017", Kinds = ["job"] });
        Assert.DoesNotContain(found.Hits, h => h.Id == "2024-017");
        Assert.Contains(found.Hits, h => h.Id == "2024-018");
        Assert.Equal(found.Total, found.Counts["outcome"].Sum(c => c.Count));
        Assert.Empty(index.Find(new SearchQuery("") { Like = "no-such-note" }).Hits);
    }

    [Fact]
    public void WhatHeldMostOften_ComesFirst()
    {
        Job Held(string id, string fault, bool cameBack) => Shelf.Job(id, id, null, "tape chewed", 1, JobOutcome.Mended) with
        {
            Causes = [new(fault, Grade.Measured)],
            FollowUps = [new(Shelf.Day(9), cameBack, null)],
        };
        using var four = Shelf.Index([Held("a", "idler", true), Held("b", "roller", false), Held("c", "roller", false), Held("d", "belt", false)]);
        var hits = four.Find(new SearchQuery("tape chewed") { Sort = SearchSort.Held }).Hits;
        Assert.Equal([2, 2, 1, 0], hits.Take(4).Select(h => h.HeldJobs));
        Assert.Equal("d", hits[2].Id);
    }
}
