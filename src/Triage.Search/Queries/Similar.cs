using Lucene.Net.Index;
using Lucene.Net.Queries.Mlt;
using Lucene.Net.Search;
using Triage.Search.Analysis;
using Triage.Search.Indexing;

namespace Triage.Search.Queries;

/// <summary>The most telling words of a note, as a question.</summary>
internal static class Similar
{
    public static Query To(int document, IndexReader reader, NoteAnalyzer analyzer) => new MoreLikeThis(reader)
    {
        Analyzer = analyzer,
        ApplyBoost = true,
        FieldNames = [.. NoteField.All.Select(f => f.Name)],
        MinTermFreq = 1,
        MinDocFreq = 2,
    }.Like(document);
}
