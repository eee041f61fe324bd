using Lucene.Net.Index;
using Lucene.Net.Store;
using Triage.Notes.Kinds;
using Triage.Search;
using Triage.Search.Indexing;

namespace Triage.SearchBench;

/// <summary>Seconds until all notes can be searched, by the product and by others, the best of three turns each.</summary>
internal sealed record Filling(double Product, double Words, double RawOne, double RawAll, double Sqlite, double ProductMegabytes, double RawMegabytes, double SqliteMegabytes)
{
    private const int Turns = 3;

    /// <summary>Fields that the product and Lucene alone filled differently; none, or the comparison is not fair.</summary>
    public required string[] Differing { get; init; }

    public static Filling Of(Note[] notes, IndexedNote[] words, Func<string, Note?> find)
    {
        double[] least = [double.MaxValue, double.MaxValue, double.MaxValue, double.MaxValue, double.MaxValue];
        for (var turn = 0; turn < Turns; turn++)
        {
            Action[] ways =
            [
                () => RawLucene.Index(words, 1).Dispose(),
                () => RawLucene.Index(words, Environment.ProcessorCount).Dispose(),
                () => FillProduct(notes, find),
                () => _ = notes.AsParallel().AsOrdered().Select(n => IndexedNote.From(n, find)).Count(n => n.Body.Length > 0),
                () => FillSqlite(words),
            ];
            for (var i = 0; i < ways.Length; i++)
            {
                GC.Collect();
                least[i] = Math.Min(least[i], Timed.Once(ways[i]) / 1000);
            }
        }

        using var raw = RawLucene.Index(words, 1);
        using var sqlite = new SqliteFts();
        sqlite.Fill(words);
        var (megabytes, differing) = OnDisk(notes, find, raw);
        return new(least[2], least[3], least[0], least[1], least[4], megabytes, raw.GetSizeInBytes() / 1e6, sqlite.Megabytes) { Differing = differing };
    }

    private static void FillProduct(Note[] notes, Func<string, Note?> find)
    {
        using var index = NoteIndex.InMemory();
        Shelf.Fill(index, notes, find);
    }

    private static void FillSqlite(IndexedNote[] words)
    {
        using var sqlite = new SqliteFts();
        sqlite.Fill(words);
    }

    /// <summary>The product's index as files: how large, and whether it holds what Lucene alone was given.</summary>
    private static (double Megabytes, string[] Differing) OnDisk(Note[] notes, Func<string, Note?> find, RAMDirectory raw)
    {
        var folder = System.IO.Directory.CreateTempSubdirectory("bench-search-").FullName;
        try
        {
            using (var index = NoteIndex.Open(folder))
                Shelf.Fill(index, notes, find);
            using var files = FSDirectory.Open(folder);
            using var product = DirectoryReader.Open(files);
            using var alone = DirectoryReader.Open(raw);
            return (new DirectoryInfo(folder).EnumerateFiles().Sum(f => f.Length) / 1e6, Differences(product, alone));
        }
        finally
        {
            System.IO.Directory.Delete(folder, recursive: true);
        }
    }

    private static string[] Differences(DirectoryReader product, DirectoryReader alone) =>
    [
        .. MultiFields.GetFields(product).Union(MultiFields.GetFields(alone))
            .Where(f => product.GetSumTotalTermFreq(f) != alone.GetSumTotalTermFreq(f) || product.GetDocCount(f) != alone.GetDocCount(f)),
    ];
}
