using Lucene.Net.Analysis.Core;
using Lucene.Net.Documents;
using Lucene.Net.Index;
using Lucene.Net.Search;
using Lucene.Net.Search.Similarities;
using Lucene.Net.Store;
using Lucene.Net.Util;
using Triage.Search.Queries;

namespace Triage.Search.Tests.Queries;

/// <summary>Against Lucene's own BooleanQuery of DisjunctionMaxQuery over the same notes, several stretches long.</summary>
[Trait("run", "long")]
public sealed class WordsQueryTests : IDisposable
{
    private const int Notes = 7_000;

    private static readonly string[] Fields = ["name", "log", "body"];

    private readonly RAMDirectory directory = new();
    private readonly DirectoryReader reader;
    private readonly IndexSearcher searcher;

    public WordsQueryTests()
    {
        var random = new Random(4);
        using var analyzer = new WhitespaceAnalyzer(LuceneVersion.LUCENE_48);
        using var writer = new IndexWriter(directory, new IndexWriterConfig(LuceneVersion.LUCENE_48, analyzer) { Similarity = new BM25Similarity() });
        for (var i = 0; i < Notes; i++)
        {
            var document = new Document();
            foreach (var field in Fields)
            {
                var text = string.Join(' ', Enumerable.Range(0, random.Next(12)).Select(_ => Word(random)));
                document.Add(new TextField(field, text, Field.Store.NO));
                document.Add(new TextField("every", text, Field.Store.NO));
            }

            writer.AddDocument(document);
        }

        reader = DirectoryReader.Open(writer, applyAllDeletes: true);
        searcher = new(reader) { Similarity = new BM25Similarity() };
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(3, 1)]
    [InlineData(3, 2)]
    [InlineData(8, 4)]
    [InlineData(8, 8)]
    [InlineData(2, 3)]
    public void FindsAndScoresAsLuceneDoes(int words, int least)
    {
        for (var seed = 0; seed < 20; seed++)
        {
            var query = Some(new Random(seed), words, least);
            AssertSame(query.Plain, query);
        }
    }

    [Fact]
    public void InsideOtherQueries_IsSkippedThroughAsLuceneDoes()
    {
        for (var seed = 0; seed < 20; seed++)
        {
            var query = Some(new Random(seed), 4, 2);
            var rare = new TermQuery(new("body", "w40"));
            AssertSame(
                new BooleanQuery { { query.Plain, Occur.MUST }, { rare, Occur.MUST } },
                new BooleanQuery { { query, Occur.MUST }, { rare, Occur.MUST } });
        }
    }

    [Fact]
    public void Explanation_IsTheScore()
    {
        var query = Some(new Random(9), 5, 2);
        Assert.All(searcher.Search(query, 20).ScoreDocs, d => Assert.Equal(d.Score, searcher.Explain(query, d.Doc).Value, 1e-5f));
    }

    public void Dispose()
    {
        reader.Dispose();
        directory.Dispose();
    }

    private void AssertSame(Query plain, Query words)
    {
        var expected = Scores(plain);
        var found = Scores(words);
        Assert.Equal(expected.Keys, found.Keys);
        Assert.All(expected, e => Assert.Equal(e.Value, found[e.Key], e.Value * 1e-6f));
    }

    private SortedDictionary<int, float> Scores(Query query) => new(searcher.Search(query, Notes).ScoreDocs.ToDictionary(d => d.Doc, d => d.Score));

    private static WordsQuery Some(Random random, int words, int least)
    {
        string[] said = [.. Enumerable.Range(0, words).Select(_ => Word(random))];
        return new(
            [.. said.Select(w => Fields.Select((f, i) => (Query)new TermQuery(new(f, w)) { Boost = 3 - i }).ToArray())],
            [.. said.Select(w => new TermQuery(new("every", w)) { Boost = 2 })],
            0.1f,
            least);
    }

    /// <summary>A few words are common, most are rare.</summary>
    private static string Word(Random random) => $"w{(int)(60 * random.NextDouble() * random.NextDouble())}";
}
