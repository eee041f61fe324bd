using System.Runtime.CompilerServices;
using Lucene.Net.Index;
using Lucene.Net.Util;

namespace Triage.Search.Indexing;

/// <summary>
/// The filter values of every note, read once a segment: Lucene's stored form takes longer to go through than all else when many notes match.
/// A value has one number in the whole index. Safe for several threads.
/// </summary>
internal sealed class FilterColumns
{
    private readonly ConditionalWeakTable<object, FilterColumn[]> bySegment = [];
    private readonly ValueNumbers[] numbers = [.. NoteFilter.All.Select(_ => new ValueNumbers())];

    /// <summary>Numbers of the values of each filter, in the order of <see cref="NoteFilter.All"/>.</summary>
    public IReadOnlyList<ValueNumbers> Numbers => numbers;

    /// <summary>The columns of a segment, in the order of <see cref="NoteFilter.All"/>.</summary>
    public FilterColumn[] Of(AtomicReader segment) =>
        bySegment.GetValue(segment.CoreCacheKey, _ => [.. NoteFilter.All.Select((f, i) => Read(segment, f.Column, numbers[i]))]);

    private static FilterColumn Read(AtomicReader segment, string name, ValueNumbers numbers)
    {
        var starts = new int[segment.MaxDoc + 1];
        if (segment.GetSortedSetDocValues(name) is not { } values)
        {
            return new(starts, []);
        }

        var numberOf = new int[values.ValueCount];
        var text = new BytesRef();
        for (var ord = 0; ord < numberOf.Length; ord++)
        {
            values.LookupOrd(ord, text);
            numberOf[ord] = numbers.Add(text.Utf8ToString());
        }

        var all = new List<int>(segment.MaxDoc);
        for (var doc = 0; doc < segment.MaxDoc; doc++)
        {
            values.SetDocument(doc);
            for (var ord = values.NextOrd(); ord != SortedSetDocValues.NO_MORE_ORDS; ord = values.NextOrd())
            {
                all.Add(numberOf[ord]);
            }

            starts[doc + 1] = all.Count;
        }

        return new(starts, [.. all]);
    }
}
