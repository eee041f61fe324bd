using System.Collections.Immutable;
using Lucene.Net.Index;
using Lucene.Net.Search;
using Triage.Search.Indexing;

namespace Triage.Search.Queries;

/// <summary>
/// Lets the filters choose among the notes that match, and counts each filter's values as if nothing were chosen in it; in one pass.
/// </summary>
internal sealed class FilteredHits : ICollector
{
    private readonly FilterColumns stored;
    private readonly ITopDocsCollector chosen;
    private readonly Column[] columns;

    /// <param name="order">Null for the best first.</param>
    /// <param name="wanted">Hits to keep, at least one.</param>
    public FilteredHits(SearchQuery query, Sort? order, FilterColumns stored, int wanted)
    {
        this.stored = stored;
        chosen = order is null
            ? TopScoreDocCollector.Create(wanted, docsScoredInOrder: true)
            : TopFieldCollector.Create(order, wanted, fillFields: true, trackDocScores: true, trackMaxScore: false, docsScoredInOrder: true);
        columns = [.. NoteFilter.All.Select((f, i) => new Column(query.Chosen(f), stored.Numbers[i]))];
    }

    public bool AcceptsDocsOutOfOrder => false;

    public int Total { get; private set; }

    public void SetScorer(Scorer scorer) => chosen.SetScorer(scorer);

    public void SetNextReader(AtomicReaderContext context)
    {
        chosen.SetNextReader(context);
        foreach (var (column, values) in columns.Zip(stored.Of(context.AtomicReader)))
        {
            column.MoveTo(values);
        }
    }

    public void Collect(int doc)
    {
        Column? against = null;
        foreach (var column in columns)
        {
            if (!column.Passes(doc))
            {
                if (against is not null)
                {
                    return;
                }

                against = column;
            }
        }

        if (against is not null)
        {
            against.Count(doc);
            return;
        }

        Total++;
        chosen.Collect(doc);
        foreach (var column in columns)
        {
            column.Count(doc);
        }
    }

    /// <summary>The best hits of several parts of the index; of equal ones the note that was filed first.</summary>
    public static ScoreDoc[] Top(FilteredHits[] parts, Sort? order, int wanted)
    {
        var each = parts.Select(p => p.chosen.GetTopDocs()).ToArray();
        return wanted == 0 ? [] : each is [var only] ? only.ScoreDocs : TopDocs.Merge(order, wanted, each).ScoreDocs;
    }

    /// <summary>Counts of several parts of the index together, by filter.</summary>
    public static ImmutableDictionary<string, ImmutableArray<ValueCount>> Counts(IReadOnlyList<FilteredHits> parts) =>
        NoteFilter.All.Select((f, i) => (f.Name, Counts: Column.Counts([.. parts.Select(p => p.columns[i])]))).ToImmutableDictionary(f => f.Name, f => f.Counts);

    /// <summary>Values of one filter in the segment being read, and how many notes had each up to now.</summary>
    private sealed class Column(ImmutableArray<string> chosen, ValueNumbers numbers)
    {
        private readonly HashSet<int> allowed = [.. chosen.Select(numbers.Find).OfType<int>()];
        private readonly int[] counts = new int[numbers.Count];
        private FilterColumn? values;

        public void MoveTo(FilterColumn segment) => values = segment;

        public bool Passes(int doc)
        {
            if (chosen.IsEmpty)
            {
                return true;
            }

            foreach (var value in values!.Of(doc))
            {
                if (allowed.Contains(value))
                {
                    return true;
                }
            }

            return false;
        }

        public void Count(int doc)
        {
            foreach (var value in values!.Of(doc))
            {
                counts[value]++;
            }
        }

        public static ImmutableArray<ValueCount> Counts(Column[] parts)
        {
            var first = parts[0];
            return
            [
                .. Enumerable.Range(0, first.counts.Length).Select(i => (Number: i, Count: parts.Sum(p => p.counts[i]))).Where(c => c.Count > 0)
                    .Select(c => new ValueCount(first.Value(c.Number), c.Count))
                    .OrderByDescending(c => c.Count).ThenBy(c => c.Value, StringComparer.Ordinal),
            ];
        }

        private string Value(int number) => numbers[number];
    }
}
