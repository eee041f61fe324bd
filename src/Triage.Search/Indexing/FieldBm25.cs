using Lucene.Net.Search;
using Lucene.Net.Search.Similarities;

namespace Triage.Search.Indexing;

/// <summary>
/// BM25 (Robertson and Zaragoza 2009, "The Probabilistic Relevance Framework: BM25 and Beyond", section 3.4) with k1 = 1.2 and b = 0.75,
/// the values that Lucene has. A field's mean length is taken over the notes that have the field: most notes leave some fields out.
/// </summary>
internal sealed class FieldBm25() : BM25Similarity(1.2f, 0.75f)
{
    protected override float AvgFieldLength(CollectionStatistics collectionStats) =>
        collectionStats is { SumTotalTermFreq: > 0, DocCount: > 0 } c ? (float)((double)c.SumTotalTermFreq / c.DocCount) : 1f;
}
