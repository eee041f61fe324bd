using Lucene.Net.Index;
using Lucene.Net.Store;

namespace Triage.Search.Indexing;

/// <summary>
/// Many notes indexed at once: each processor takes a stretch of them into an index of its own, and the stretches are put together in the order
/// of the notes. Threads that share one writer would file them in the order of chance, which decides between notes of equal score.
/// </summary>
internal static class Slices
{
    // below this, a second index saves little; set by hand
    private const int LeastNotes = 5_000;

    /// <param name="words">What is searched of a note; called by several threads.</param>
    public static void Add<T>(IndexWriter writer, Func<IndexWriterConfig> writing, IReadOnlyList<T> notes, Func<T, IndexedNote> words)
    {
        var count = Math.Clamp(notes.Count / LeastNotes, 1, Environment.ProcessorCount);
        if (count == 1)
        {
            Add(writer, notes, words, 0, notes.Count);
            return;
        }

        Lucene.Net.Store.Directory[] slices = [.. Enumerable.Range(0, count).Select(_ => new RAMDirectory())];
        Parallel.For(0, count, i =>
        {
            using var slice = new IndexWriter(slices[i], writing());
            Add(slice, notes, words, Start(i), Start(i + 1));
        });
        writer.AddIndexes(slices);
        Array.ForEach(slices, s => s.Dispose());

        int Start(int slice) => (int)((long)notes.Count * slice / count);
    }

    private static void Add<T>(IndexWriter writer, IReadOnlyList<T> notes, Func<T, IndexedNote> words, int from, int to)
    {
        for (var i = from; i < to; i++)
        {
            writer.AddDocument(NoteDocument.From(words(notes[i])));
        }
    }
}
