using Triage.Notes.Kinds;
using Triage.Search.Indexing;
using Triage.Search.Queries;

namespace Triage.Search.Tests.Queries;

public sealed class SearchTests : IDisposable
{
    private readonly NoteIndex index = Shelf.Index();

    public void Dispose() => index.Dispose();

    [Theory]
    [InlineData("C14")]
    [InlineData("c14")]
    [InlineData("IC3")]
    [InlineData("HD-44780")]
    [InlineData("hd44780")]
    [InlineData("44780")]
    [InlineData("0.1F")]
    public void Marking_WholeOrSplit_FindsTheDevice(string marking) =>
        Assert.Contains(index.Find(marking).Hits, h => h.Id == "corvane-k61");

    [Theory]
    [InlineData("2SC1815", "2024-019")]
    [InlineData("1815", "2024-019")]
    [InlineData("47/16", "2024-017")]
    [InlineData("K-61", "corvane-k61")]
    [InlineData("K61", "corvane-k61")]
    public void Marking_IsFoundFirstWhereItStands(string marking, string id) => Assert.Equal(id, index.Find(marking).Hits[0].Id);

    [Fact]
    public void WholeMarking_ComesBeforeItsPieces()
    {
        using var both = Shelf.Index(
        [
            new Job("pieces", "HD then 44 in a row") { Complaint = "HD 44 HD 44 HD 44" },
            new Job("whole", "Another") { Body = "chip HD44 got warm" },
        ]);
        Assert.Equal("whole", both.Find("HD-44").Hits[0].Id);
        Assert.Contains(both.Find("HD-44").Hits, h => h.Id == "pieces");
    }

    [Fact]
    public void Stems_MeetEachOther() => Assert.Contains(index.Find("humming").Hits, h => h.Id == "2024-020");

    [Fact]
    public void QuotedWords_StandTogetherAndInOrder()
    {
        Assert.Contains(index.Find("\"blank display\"").Hits, h => h.Id == "2024-018");
        Assert.DoesNotContain(index.Find("\"display blank\"").Hits, h => h.Id == "2024-018");
    }

    [Fact]
    public void JobIsFoundByNamesOfWhatItRefersTo()
    {
        Assert.Contains(index.Find(new SearchQuery("Corvane") { Kinds = ["job"] }).Hits, h => h.Id == "2024-017");
        Assert.Contains(index.Find(new SearchQuery("back-up capacitor shorted") { Kinds = ["job"] }).Hits, h => h.Id == "2024-017");
    }

    [Fact]
    public void Synonym_FindsTheNoteBelowTheWordItself()
    {
        using var both = Shelf.Index([new Job("says-supercap", "Supercap measured") { Complaint = "supercap flat" }]);
        var ids = both.Find("supercap").Hits.Select(h => h.Id).ToList();
        Assert.Contains("backup-capacitor-shorted", ids);
        Assert.True(ids.IndexOf("says-supercap") < ids.IndexOf("backup-capacitor-shorted"));
    }

    [Fact]
    public void Hit_SaysWhyItMatchedAndHowTheJobEnded()
    {
        var hit = index.Find("nothing on the display").Hits.Single(h => h.Id == "2024-017");
        Assert.Equal("mended", hit.Outcome);
        Assert.Equal("Replace the back-up capacitor", hit.Fix);
        var complaint = Assert.Single(hit.Matched, m => m.Field == "complaint");
        Assert.Equal(["nothing", "on", "display"], complaint.Words);
        var passage = Assert.Single(hit.Passages, p => p.Field == "complaint");
        Assert.Equal(["nothing", "on", "display"], passage.Marks.Select(m => m.Of(passage.Text)));
    }

    [Fact]
    public void FixThatHeld_ComesBeforeTheSameWordsUnsolved()
    {
        using var three = Shelf.Index(
        [
            Shelf.Job("unsolved", "tape chewed", null, "chews tapes", 1, JobOutcome.Unsolved),
            Shelf.Job("mended", "tape chewed", null, "chews tapes", 1, JobOutcome.Mended),
            Shelf.Job("held", "tape chewed", null, "chews tapes", 1, JobOutcome.Mended) with { FollowUps = [new(Shelf.Day(9), false, null)] },
            Shelf.Job("came-back", "tape chewed", null, "chews tapes", 1, JobOutcome.Mended) with { FollowUps = [new(Shelf.Day(9), true, null)] },
        ]);
        var ids = three.Find("chews tapes").Hits.Select(h => h.Id).ToList();
        Assert.Equal(["held", "mended"], ids[..2]);
    }

    [Fact]
    public void Date_SortsNewestFirstAndDatelessLast()
    {
        var hits = index.Find(new SearchQuery("") { Sort = SearchSort.Date, Take = 100 }).Hits;
        Assert.Equal(["2024-020", "2024-019", "2024-018", "2024-017"], hits.Select(h => h.Id).Take(4));
        Assert.All(hits.Skip(4), h => Assert.Null(h.Date));
    }

    [Fact]
    public void SkipAndTake_CutTheSameList()
    {
        var all = index.Find(new SearchQuery("display") { Take = 100 });
        var second = index.Find(new SearchQuery("display") { Skip = 1, Take = 2 });
        Assert.Equal(all.Total, second.Total);
        Assert.Equal(all.Hits.Skip(1).Take(2).Select(h => h.Id), second.Hits.Select(h => h.Id));
    }

    [Theory]
    [InlineData("🎹🎹")]
    [InlineData("?!*()[]{}^~\\/:\"")]
    [InlineData("\"")]
    public void NoWords_IsSaid(string text)
    {
        var results = index.Find(text);
        Assert.Equal((0, SearchTexts.NoWords), (results.Total, results.Notice));
    }

    [Theory]
    [InlineData("display AND OR NOT (")]
    [InlineData("display:blank^^ ~2 \"")]
    [InlineData("display *")]
    [InlineData("\0display\ud800")]
    public void QuerySigns_AreJustText(string text) => Assert.Contains(index.Find(text).Hits, h => h.Id == "display");

    [Fact]
    public void HundredKilobytes_AreCutAndSaid()
    {
        var results = index.Find("display " + string.Concat(Enumerable.Range(0, 12_500).Select(i => $"word{i} ")));
        Assert.StartsWith("Only the first 4000 of", results.Notice, StringComparison.Ordinal);
    }

    [Fact]
    public void UnreadableNote_IsFoundByItsText()
    {
        index.Put(IndexedNote.Unreadable("jobs/broken.md", "id: [oops\ncomplaint: wow and flutter"));
        index.Refresh();
        var hit = Assert.Single(index.Find("flutter").Hits);
        Assert.Equal(("jobs/broken.md", "unreadable"), (hit.Id, hit.Kind));
    }
}
