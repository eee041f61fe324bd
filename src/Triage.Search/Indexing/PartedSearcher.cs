using Lucene.Net.Index;
using Lucene.Net.Search;

namespace Triage.Search.Indexing;

/// <summary>Searches a large index in several parts at once, each of neighbouring segments; a small one in one.</summary>
internal sealed class PartedSearcher(IndexReader reader) : IndexSearcher(reader)
{
    // below this, a second thread saves little; set by hand
    private const int LeastNotesOfPart = 10_000;

    private readonly List<AtomicReaderContext>[] parts = Parted(reader);

    /// <summary>One collector for each part, in the order of the notes.</summary>
    public T[] SearchParts<T>(Query query, Func<T> collector)
        where T : ICollector
    {
        var weight = CreateNormalizedWeight(query);
        T[] found = [.. parts.Select(_ => collector())];
        if (parts.Length == 1)
        {
            Search(parts[0], weight, found[0]);
        }
        else
        {
            Parallel.For(0, parts.Length, i => Search(parts[i], weight, found[i]));
        }

        return found;
    }

    private static List<AtomicReaderContext>[] Parted(IndexReader reader)
    {
        var count = Math.Clamp(reader.MaxDoc / LeastNotesOfPart, 1, Environment.ProcessorCount);
        var size = (double)reader.MaxDoc / count;
        return reader.Leaves.Count == 0
            ? [[]]
            : [.. reader.Leaves.GroupBy(l => (int)((l.DocBase + (l.Reader.MaxDoc / 2)) / size)).Select(g => g.ToList())];
    }
}
