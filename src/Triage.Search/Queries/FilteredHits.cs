using System.Collections.Immutable;
using Lucene.Net.Index;
using Lucene.Net.Search;
using Lucene.Net.Util;
using Triage.Search.Indexing;

namespace Triage.Search.Queries;

/// <summary>
/// Lets the filters choose among the notes that match, and counts each filter's values as if nothing were chosen in it; in one pass.
/// </summary>
internal sealed class FilteredHits(SearchQuery query, ICollector chosen) : ICollector
{
    private readonly Column[] columns = [.. NoteFilter.All.Select(f => new Column(f, f.Chosen(query)))];

    public bool AcceptsDocsOutOfOrder => false;

    public int Total { get; private set; }

    public void SetScorer(Scorer scorer) => chosen.SetScorer(scorer);

    public void SetNextReader(AtomicReaderContext context)
    {
        chosen.SetNextReader(context);
        foreach (var column in columns)
        {
            column.MoveTo(context.AtomicReader);
        }
    }

    public void Collect(int doc)
    {
        Column? against = null;
        var refusals = 0;
        foreach (var column in columns)
        {
            if (!column.Read(doc))
            {
                against = column;
                refusals++;
            }
        }

        if (refusals == 0)
        {
            Total++;
            chosen.Collect(doc);
            Array.ForEach(columns, c => c.Count());
        }
        else if (refusals == 1)
        {
            against!.Count();
        }
    }

    public ImmutableDictionary<string, ImmutableArray<ValueCount>> Counts() => columns.ToImmutableDictionary(c => c.Name, c => c.Counts());

    /// <summary>Values of one filter in the segment being read.</summary>
    private sealed class Column(NoteFilter filter, ImmutableArray<string> chosen)
    {
        private readonly Dictionary<string, int> counts = [];
        private readonly List<int> here = [];
        private SortedSetDocValues? values;
        private int[] segmentCounts = [];
        private HashSet<long> allowed = [];

        public string Name => filter.Name;

        public void MoveTo(AtomicReader reader)
        {
            Gather();
            values = reader.GetSortedSetDocValues(filter.Column);
            segmentCounts = new int[values?.ValueCount ?? 0];
            allowed = values is null ? [] : [.. chosen.Select(c => values.LookupTerm(new BytesRef(c))).Where(ord => ord >= 0)];
        }

        /// <summary>Reads the values of a note. True when the filter lets it through.</summary>
        public bool Read(int doc)
        {
            here.Clear();
            var passes = chosen.IsEmpty;
            if (values is null)
            {
                return passes;
            }

            values.SetDocument(doc);
            for (var ord = values.NextOrd(); ord != SortedSetDocValues.NO_MORE_ORDS; ord = values.NextOrd())
            {
                here.Add((int)ord);
                passes |= allowed.Contains(ord);
            }

            return passes;
        }

        public void Count()
        {
            foreach (var ord in here)
            {
                segmentCounts[ord]++;
            }
        }

        public ImmutableArray<ValueCount> Counts()
        {
            Gather();
            return
            [
                .. counts.Select(c => new ValueCount(c.Key, c.Value))
                    .OrderByDescending(c => c.Count).ThenBy(c => c.Value, StringComparer.Ordinal),
            ];
        }

        private void Gather()
        {
            var value = new BytesRef();
            for (var ord = 0; ord < segmentCounts.Length; ord++)
            {
                if (segmentCounts[ord] > 0)
                {
                    values!.LookupOrd(ord, value);
                    var text = value.Utf8ToString();
                    counts[text] = counts.GetValueOrDefault(text) + segmentCounts[ord];
                }
            }

            segmentCounts = [];
        }
    }
}
