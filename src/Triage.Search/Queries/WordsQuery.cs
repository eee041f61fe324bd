using Lucene.Net.Index;
using Lucene.Net.Search;
using Lucene.Net.Util;

namespace Triage.Search.Queries;

/// <summary>
/// Notes with at least so many of some words, each word counting as in the field where it counts most, plus a share of its other fields, plus
/// what it counts among all text.
/// Finds and scores what Lucene's own <see cref="Plain"/> form does, but goes through the notes stretch by stretch, in each word by word, which
/// takes a fraction of the time when words are common (term-at-a-time: Turtle and Flood 1995, "Query Evaluation: Strategies and Optimizations").
/// </summary>
/// <param name="words">For each word, its query in each field.</param>
/// <param name="everywhere">For each word, its query in all text: finds what the fields find.</param>
/// <param name="others">Share of the other fields, from 0 to 1.</param>
/// <param name="least">Words that a note must have, at least one.</param>
internal sealed class WordsQuery(IReadOnlyList<Query[]> words, IReadOnlyList<Query> everywhere, float others, int least) : Query
{
    /// <summary>The same as Lucene has it.</summary>
    public BooleanQuery Plain
    {
        get
        {
            var any = new BooleanQuery { MinimumNumberShouldMatch = least, Boost = Boost };
            foreach (var (fields, all) in words.Zip(everywhere))
            {
                any.Add(new BooleanQuery(disableCoord: true) { { new DisjunctionMaxQuery(fields, others), Occur.MUST }, { all, Occur.SHOULD } }, Occur.SHOULD);
            }

            return any;
        }
    }

    public override Query Rewrite(IndexReader reader)
    {
        Query[][] rewritten = [.. words.Select(fields => fields.Select(f => f.Rewrite(reader)).ToArray())];
        Query[] all = [.. everywhere.Select(e => e.Rewrite(reader))];
        return words.Zip(rewritten).All(w => w.First.AsSpan().SequenceEqual(w.Second)) && everywhere.SequenceEqual(all)
            ? this
            : new WordsQuery(rewritten, all, others, least) { Boost = Boost };
    }

    public override void ExtractTerms(ISet<Term> terms) => Plain.ExtractTerms(terms);

    public override Weight CreateWeight(IndexSearcher searcher) =>
        new WordsWeight(this, searcher, [.. words.Select(fields => fields.Select(f => f.CreateWeight(searcher)).ToArray())], [.. everywhere.Select(e => e.CreateWeight(searcher))]);

    public override string ToString(string field) => Plain.ToString(field);

    public override bool Equals(object? obj) => obj is WordsQuery other && Plain.Equals(other.Plain);

    public override int GetHashCode() => Plain.GetHashCode();

    private sealed class WordsWeight(WordsQuery query, IndexSearcher searcher, Weight[][] words, Weight[] everywhere) : Weight
    {
        private (float Norm, float Boost) normalized = (1, 1);

        public override Query Query => query;

        public override float GetValueForNormalization() => query.Boost * query.Boost * words.SelectMany(w => w).Concat(everywhere).Sum(f => f.GetValueForNormalization());

        public override void Normalize(float norm, float topLevelBoost)
        {
            normalized = (norm, topLevelBoost);
            foreach (var field in words.SelectMany(w => w).Concat(everywhere))
            {
                field.Normalize(norm, topLevelBoost * query.Boost);
            }
        }

        public override Explanation Explain(AtomicReaderContext context, int doc)
        {
            var plain = query.Plain.CreateWeight(searcher);
            plain.GetValueForNormalization();
            plain.Normalize(normalized.Norm, normalized.Boost);
            return plain.Explain(context, doc);
        }

        public override Scorer? GetScorer(AtomicReaderContext context, IBits? acceptDocs)
        {
            WordScorers[] here =
            [
                .. words.Zip(everywhere, (w, e) => new WordScorers([.. w.Select(f => f.GetScorer(context, acceptDocs)).OfType<Scorer>()], e.GetScorer(context, acceptDocs)))
                    .Where(w => w.Fields.Length > 0),
            ];
            return here.Length < query.Least ? null : new WordsScorer(this, here, query.Others, query.Least, context.AtomicReader.MaxDoc);
        }
    }

    private float Others => others;

    private int Least => least;
}
