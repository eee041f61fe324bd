using System.Collections.Immutable;
using Lucene.Net.Queries;
using Lucene.Net.Queries.Function;
using Lucene.Net.Queries.Function.ValueSources;
using Lucene.Net.Search;
using Triage.Search.Analysis;
using Triage.Search.Indexing;

namespace Triage.Search.Queries;

/// <summary>Answers questions from the index as it was when this was opened. Safe for several threads.</summary>
public sealed class NoteSearcher : IDisposable
{
    private const int MostHits = 10_000;

    private readonly SearcherManager manager;
    private readonly PartedSearcher searcher;
    private readonly FilterColumns columns;
    private readonly NoteAnalyzer analyzer;
    private readonly SynonymRings synonyms;

    internal NoteSearcher(SearcherManager manager, FilterColumns columns, NoteAnalyzer analyzer, SynonymRings synonyms)
    {
        this.manager = manager;
        this.columns = columns;
        this.analyzer = analyzer;
        this.synonyms = synonyms;
        searcher = (PartedSearcher)manager.Acquire();
    }

    /// <summary>Notes in the index.</summary>
    public int Count => searcher.IndexReader.NumDocs;

    /// <summary>Never throws for what was typed.</summary>
    public SearchResults Search(SearchQuery query)
    {
        var text = TextQuery.From(query.Text, analyzer, synonyms);
        if (text.Query is null && !string.IsNullOrWhiteSpace(query.Text))
        {
            return new(0, [], ImmutableDictionary<string, ImmutableArray<ValueCount>>.Empty, SearchTexts.NoWords);
        }

        var wanted = Math.Clamp(query.Skip, 0, MostHits) + Math.Clamp(query.Take, 0, MostHits);
        var scored = Scored(text.Query);
        var parts = searcher.SearchParts(scored, () => new FilteredHits(query, columns, Math.Max(1, wanted)));
        var passages = new Passages(analyzer, searcher, scored);
        var hits = FilteredHits.Top(parts, wanted).Skip(query.Skip).Select(d => Hit(d, passages));
        return new(parts.Sum(p => p.Total), [.. hits], FilteredHits.Counts(parts), text.Notice);
    }

    /// <summary>How a note got its score for a question; null when it does not match or is not there.</summary>
    public ScoreReason? Explain(SearchQuery query, string id)
    {
        var doc = searcher.Search(new TermQuery(new(NoteDocument.Id, id)), 1).ScoreDocs.FirstOrDefault();
        if (doc is null)
        {
            return null;
        }

        var why = searcher.Explain(Scored(TextQuery.From(query.Text, analyzer, synonyms).Query), doc.Doc);
        return why.IsMatch ? ScoreReason.From(why) : null;
    }

    public void Dispose() => manager.Release(searcher);

    private static Query Scored(Query? text) =>
        new CustomScoreQuery(text ?? new MatchAllDocsQuery(), new FunctionQuery(new SingleFieldSource(NoteDocument.WeightColumn)));

    private SearchHit Hit(ScoreDoc found, Passages passages)
    {
        var document = searcher.Doc(found.Doc);
        var (pieces, matched) = passages.Of(document);
        return new(document.Get(NoteDocument.Id), document.Get(NoteDocument.Kind), document.Get(NoteDocument.Title), found.Score)
        {
            Passages = pieces,
            Matched = matched,
            Outcome = document.Get(NoteDocument.Outcome),
            Fix = document.Get(NoteDocument.Fix),
            Date = NoteDocument.DateOf(document),
        };
    }
}
