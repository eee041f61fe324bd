using Triage.Notes.Kinds;

namespace Triage.Search.Tests.Queries;

/// <summary>
/// The score against numbers worked out by hand. Formula: Robertson and Zaragoza 2009, "The Probabilistic Relevance Framework: BM25 and
/// Beyond", Foundations and Trends in Information Retrieval 3(4), section 3.4, with k1 = 1.2, b = 0.75 and the numerator (k1 + 1) tf;
/// idf = ln(1 + (N − n + 0.5) / (n + 0.5)), the logarithm of the Robertson and Spärck Jones weight kept above zero.
/// </summary>
public sealed class ScoreTests
{
    /// <remarks>
    /// Four notes with bodies of 4, 4, 4 and 16 words (lengths that the index keeps exactly), mean 7; "flutter" in two of them.
    /// idf = ln(1 + 2.5/2.5) = ln 2 = 0.693147.
    /// Twice in 4 words: 2.2·2 / (2 + 1.2·(0.25 + 0.75·4/7)) = 4.4 / 2.814286 = 1.563452.
    /// Once in 16 words: 2.2·1 / (1 + 1.2·(0.25 + 0.75·16/7)) = 2.2 / 3.357143 = 0.655319.
    /// All text of a note counts three times as well: three words more each (id and name), mean 10; the index keeps 7 as 64/9 and 19 as 1024/49.
    /// Twice in 64/9: 4.4 / (2 + 1.2·(0.25 + 0.75·64/90)) = 4.4 / 2.94 = 1.496599. Once in 1024/49: 2.2 / 3.180816 = 0.691646.
    /// Together ln 2 · (1.563452 + 3·1.496599) = 4.195792 and ln 2 · (0.655319 + 3·0.691646) = 1.892471.
    /// </remarks>
    [Theory]
    [InlineData("short", 1.563452, 1.496599, 4.195792)]
    [InlineData("long", 0.655319, 0.691646, 1.892471)]
    public void Bm25_IsAsWorkedOutByHand(string id, double inBody, double inAll, double score)
    {
        using var index = NoteIndex.InMemory();
        Shelf.Fill(
            index,
            [
                Note("short", "flutter capstan flutter belt"),
                Note("long", "flutter " + string.Join(' ', Enumerable.Repeat("capstan belt roller", 5))),
                Note("third", "capstan belt roller motor"),
                Note("fourth", "belt belt motor roller"),
            ]);
        using var searcher = index.OpenSearcher();
        var parts = searcher.Explain(new("flutter"), id)!.All.ToList();
        Assert.Contains(parts, p => p.What.StartsWith("idf(", StringComparison.Ordinal) && Math.Abs(p.Value - Math.Log(2)) < 1e-6);
        Assert.Contains(parts, p => p.What.StartsWith("tfNorm", StringComparison.Ordinal) && Math.Abs(p.Value - inBody) < 1e-5);
        Assert.Contains(parts, p => p.What.StartsWith("tfNorm", StringComparison.Ordinal) && Math.Abs(p.Value - inAll) < 1e-5);
        Assert.Equal(score, parts[0].Value, 5);
        Assert.Equal(score, searcher.Search(new("flutter")).Hits.Single(h => h.Id == id).Score, 5);
    }

    [Fact]
    public void Explain_IsNullForWhatDoesNotMatch()
    {
        using var index = Shelf.Index();
        using var searcher = index.OpenSearcher();
        Assert.Null(searcher.Explain(new("flutter"), "display"));
        Assert.Null(searcher.Explain(new("display"), "no-such-note"));
    }

    private static PartClass Note(string id, string body) => new(id, "named otherwise") { Body = body };
}
