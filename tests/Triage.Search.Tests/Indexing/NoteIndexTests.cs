using Triage.Notes.Kinds;
using Triage.Search.Indexing;
using Triage.Search.Queries;

namespace Triage.Search.Tests.Indexing;

public sealed class NoteIndexTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("note-index-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void PutIsFoundAfterRefresh_AndAnOpenSearcherStaysAsItWas()
    {
        using var index = Shelf.Index();
        using var before = index.OpenSearcher();
        index.Put(IndexedNote.From(new Job("new", "Warble") { Complaint = "warbles" }, _ => null));
        Assert.Equal(0, index.Find("warbles").Total);
        index.Refresh();
        Assert.Equal(1, index.Find("warbles").Total);
        Assert.Equal(0, before.Search(new("warbles")).Total);
    }

    [Fact]
    public void PutReplaces_RemoveRemoves()
    {
        using var index = Shelf.Index();
        index.Put(IndexedNote.From(new Job("2024-020", "K-61 in again") { Complaint = "now squeals" }, _ => null));
        index.Remove("2024-018");
        index.Refresh();
        Assert.Equal(0, index.Find("hums loudly").Total);
        Assert.Equal("2024-020", Assert.Single(index.Find("squeals").Hits).Id);
        Assert.Equal(0, index.Find("loft").Total);
    }

    [Fact]
    public void StoredIndex_IsTakenAsItIs()
    {
        Store(folder.FullName);
        using var again = NoteIndex.Open(folder.FullName);
        Assert.Null(again.StartedAnew);
        Assert.Equal("2024-017", again.Find("47/16").Hits[0].Id);
    }

    [Fact]
    public void KilledProcess_KeepsWhatWasCommittedAndNothingElse()
    {
        using var index = NoteIndex.Open(folder.FullName);
        Shelf.Fill(index, Shelf.Notes);
        index.Commit();
        index.Put(IndexedNote.From(new Job("late", "Late") { Complaint = "warbles" }, _ => null));
        index.Refresh();
        var left = Directory.CreateTempSubdirectory("note-index-killed-");
        try
        {
            // what a kill leaves: the files as they are, the writer never closed, its lock file still there
            foreach (var file in folder.GetFiles())
            {
                file.CopyTo(Path.Combine(left.FullName, file.Name));
            }

            using var again = NoteIndex.Open(left.FullName);
            Assert.Null(again.StartedAnew);
            Assert.Equal(Shelf.Notes.Length, again.Find(new SearchQuery("")).Total);
            Assert.Equal(0, again.Find("warbles").Total);
        }
        finally
        {
            left.Delete(recursive: true);
        }
    }

    [Theory]
    [InlineData(".cfs", 40)]
    [InlineData("segments_", 8)]
    [InlineData(".si", 0)]
    public void DamagedIndex_IsEmptiedAndSaid(string file, int keep)
    {
        Store(folder.FullName);
        foreach (var damaged in folder.GetFiles().Where(f => f.Name.Contains(file, StringComparison.Ordinal)))
        {
            using var stream = damaged.OpenWrite();
            stream.SetLength(keep);
        }

        AssertStartsAnew(SearchTexts.Damaged);
    }

    [Fact]
    public void OneFlippedByte_IsDamage()
    {
        Store(folder.FullName);
        var data = folder.GetFiles("*.cfs").Concat(folder.GetFiles("*.fdt")).MaxBy(f => f.Length)!;
        var bytes = File.ReadAllBytes(data.FullName);
        bytes[bytes.Length / 2] ^= 0xff;
        File.WriteAllBytes(data.FullName, bytes);
        AssertStartsAnew(SearchTexts.Damaged);
    }

    [Fact]
    public void IndexWithoutThisVersionsKey_IsEmptiedAndSaid()
    {
        using (var directory = Lucene.Net.Store.FSDirectory.Open(folder.FullName))
        using (var analyzer = new Lucene.Net.Analysis.Core.KeywordAnalyzer())
        using (var writer = new Lucene.Net.Index.IndexWriter(directory, new(Lucene.Net.Util.LuceneVersion.LUCENE_48, analyzer)))
        {
            writer.AddDocument([new Lucene.Net.Documents.StringField("id", "old", Lucene.Net.Documents.Field.Store.YES)]);
        }

        AssertStartsAnew(SearchTexts.Outdated);
    }

    [Fact]
    public void SecondWriter_IsToldWhichFolderIsOpen()
    {
        using var index = NoteIndex.Open(folder.FullName);
        index.Commit();
        var refused = Assert.Throws<IOException>(() => NoteIndex.Open(folder.FullName));
        Assert.Equal(SearchTexts.InUse(folder.FullName), refused.Message);
    }

    [Fact]
    public void FolderThatVanishes_FailsTheCommitButStillSearchesAndCloses()
    {
        var gone = Directory.CreateTempSubdirectory("note-index-gone-");
        using (var index = NoteIndex.Open(gone.FullName))
        {
            Shelf.Fill(index, Shelf.Notes);
            gone.Delete(recursive: true);
            Assert.ThrowsAny<IOException>(index.Commit);
            Assert.Equal("2024-017", index.Find("47/16").Hits[0].Id);
        }

        using (var again = NoteIndex.Open(gone.FullName))
        {
            Assert.Equal(0, again.Find(new SearchQuery("")).Total);
        }

        gone.Delete(recursive: true);
    }

    [Fact]
    public void OwnerAndSerialNumber_AreNotIndexed()
    {
        using var index = Shelf.Index([new Job("private", "Private") { Owner = "Quillfeather", Serial = "SN998877" }]);
        Assert.Equal(0, index.Find("Quillfeather").Total);
        Assert.Equal(0, index.Find("SN998877").Total);
    }

    private static void Store(string folder)
    {
        using var index = NoteIndex.Open(folder);
        Shelf.Fill(index, Shelf.Notes);
    }

    private void AssertStartsAnew(string reason)
    {
        using (var index = NoteIndex.Open(folder.FullName))
        {
            Assert.Equal(reason, index.StartedAnew);
            Assert.Equal(0, index.Find(new SearchQuery("")).Total);
            Shelf.Fill(index, Shelf.Notes);
        }

        using var again = NoteIndex.Open(folder.FullName);
        Assert.Null(again.StartedAnew);
        Assert.Equal(Shelf.Notes.Length, again.Find(new SearchQuery("")).Total);
    }
}
