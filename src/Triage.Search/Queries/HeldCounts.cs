using System.Collections;
using Lucene.Net.Index;
using Lucene.Net.Queries.Function;
using Lucene.Net.Queries.Function.DocValues;
using Lucene.Net.Util;
using Triage.Search.Indexing;

namespace Triage.Search.Queries;

/// <summary>For each note, in how many jobs its cause was mended and is known to have held; the best of several causes.</summary>
internal sealed class HeldCounts : ValueSource
{
    private static readonly string Causes = NoteFilter.All.Single(f => f.Name == "cause").Column;

    private readonly IndexReader reader;
    private readonly Dictionary<string, int> byCause = [];

    public HeldCounts(IndexReader reader)
    {
        this.reader = reader;
        foreach (var leaf in reader.Leaves)
        {
            Count(leaf.AtomicReader);
        }
    }

    public int Of(int document)
    {
        var leaf = reader.Leaves[ReaderUtil.SubIndex(document, reader.Leaves)];
        return (int)GetValues(new Hashtable(), leaf).DoubleVal(document - leaf.DocBase);
    }

    public override FunctionValues GetValues(IDictionary context, AtomicReaderContext readerContext)
    {
        var causes = readerContext.AtomicReader.GetSortedSetDocValues(Causes);
        return new Values(this, causes is null ? _ => 0 : doc => CausesOf(causes, doc).Select(c => byCause.GetValueOrDefault(c)).DefaultIfEmpty().Max());
    }

    public override bool Equals(object? o) => ReferenceEquals(this, o);

    public override int GetHashCode() => byCause.GetHashCode();

    public override string GetDescription() => "held";

    private void Count(AtomicReader segment)
    {
        var held = segment.GetNumericDocValues(NoteDocument.HeldColumn);
        var causes = segment.GetSortedSetDocValues(Causes);
        var live = segment.LiveDocs;
        for (var doc = 0; held is not null && causes is not null && doc < segment.MaxDoc; doc++)
        {
            if (held.Get(doc) == 1 && live?.Get(doc) != false)
            {
                foreach (var cause in CausesOf(causes, doc))
                {
                    byCause[cause] = byCause.GetValueOrDefault(cause) + 1;
                }
            }
        }
    }

    private static IEnumerable<string> CausesOf(SortedSetDocValues causes, int doc)
    {
        causes.SetDocument(doc);
        for (var ord = causes.NextOrd(); ord != SortedSetDocValues.NO_MORE_ORDS; ord = causes.NextOrd())
        {
            var cause = new BytesRef();
            causes.LookupOrd(ord, cause);
            yield return cause.Utf8ToString();
        }
    }

    private sealed class Values(ValueSource source, Func<int, int> count) : DoubleDocValues(source)
    {
        public override double DoubleVal(int doc) => count(doc);
    }
}
