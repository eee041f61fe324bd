using System.Collections.Immutable;
using Lucene.Net.Queries;
using Lucene.Net.Queries.Function;
using Lucene.Net.Queries.Function.ValueSources;
using Lucene.Net.Search;
using Triage.Search.Analysis;
using Triage.Search.Indexing;
using Triage.Search.Words;

namespace Triage.Search.Queries;

/// <summary>Answers questions from the index as it was when this was opened. Safe for several threads.</summary>
public sealed class NoteSearcher : IDisposable
{
    private const int MostHits = 10_000;

    private static readonly Sort Newest = new(new SortField(NoteDocument.DateColumn, SortFieldType.INT64, reverse: true), SortField.FIELD_SCORE);

    private readonly SearcherManager manager;
    private readonly PartedSearcher searcher;
    private readonly FilterColumns columns;
    private readonly NoteAnalyzer analyzer;
    private readonly Lazy<Recogniser>? understands;
    private readonly SynonymRings synonyms;
    private readonly Ranking parts;
    private readonly IndexWords words;
    private HeldCounts? held;

    internal NoteSearcher(SearcherManager manager, FilterColumns columns, NoteAnalyzer analyzer, SynonymRings synonyms, Lazy<Recogniser>? understands, Ranking parts)
    {
        this.manager = manager;
        this.columns = columns;
        this.analyzer = analyzer;
        this.synonyms = synonyms;
        this.understands = understands;
        this.parts = parts;
        searcher = (PartedSearcher)manager.Acquire();
        words = new(searcher.IndexReader);
    }

    private HeldCounts Held => held ??= new(searcher.IndexReader);

    /// <summary>Notes in the index.</summary>
    public int Count => searcher.IndexReader.NumDocs;

    /// <summary>Never throws for what was typed.</summary>
    public SearchResults Search(SearchQuery query)
    {
        var text = Read(query);
        if (text.Query is null && query.Like is null && !string.IsNullOrWhiteSpace(query.Text))
        {
            return new(0, [], ImmutableDictionary<string, ImmutableArray<ValueCount>>.Empty, SearchTexts.NoWords);
        }

        var wanted = Math.Clamp(query.Skip, 0, MostHits) + Math.Clamp(query.Take, 0, MostHits);
        var scored = Scored(Wanted(text.Query, query.Like));
        var order = Order(query.Sort);
        var found = searcher.SearchParts(scored, () => new FilteredHits(query, order, columns, Math.Max(1, wanted)));
        var passages = new Passages(analyzer, searcher, scored);
        var hits = FilteredHits.Top(found, order, wanted).Skip(query.Skip).Select(d => Hit(d, passages));
        return new(found.Sum(p => p.Total), [.. hits], FilteredHits.Counts(found), text.Notice) { DidYouMean = text.DidYouMean };
    }

    /// <summary>How a note got its score for a question; null when it does not match or is not there.</summary>
    public ScoreReason? Explain(SearchQuery query, string id)
    {
        var doc = Document(id);
        if (doc is null)
        {
            return null;
        }

        var why = searcher.Explain(Scored(Wanted(Read(query).Query, query.Like)), doc.Doc);
        return why.IsMatch ? ScoreReason.From(why) : null;
    }

    public void Dispose() => manager.Release(searcher);

    private TextQuery Read(SearchQuery query) => TextQuery.From(query, new(analyzer, synonyms, parts.Findings ? understands?.Value : null, words, parts));

    private ScoreDoc? Document(string id) => searcher.Search(new TermQuery(new(NoteDocument.Id, id)), 1).ScoreDocs.FirstOrDefault();

    /// <summary>Notes with the words; of them, those that have most in common with another note.</summary>
    private Query? Wanted(Query? text, string? like)
    {
        if (like is null)
        {
            return text;
        }

        var both = new BooleanQuery { { new TermQuery(new(NoteDocument.Id, like)), Occur.MUST_NOT } };
        both.Add(Document(like) is { } doc ? Similar.To(doc.Doc, searcher.IndexReader, analyzer) : new BooleanQuery(), Occur.MUST);
        if (text is not null)
        {
            both.Add(text, Occur.MUST);
        }

        return both;
    }

    private Query Scored(Query? text) => parts.PriorFix
        ? new CustomScoreQuery(text ?? new MatchAllDocsQuery(), new FunctionQuery(new SingleFieldSource(NoteDocument.WeightColumn)))
        : text ?? new MatchAllDocsQuery();

    /// <summary>Null for the best first.</summary>
    private Sort? Order(SearchSort sort) => sort switch
    {
        SearchSort.Relevance => null,
        SearchSort.Date => Newest,
        SearchSort.Held => new Sort(Held.GetSortField(true), SortField.FIELD_SCORE).Rewrite(searcher),
    };

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
            HeldJobs = Held.Of(found.Doc),
        };
    }
}
