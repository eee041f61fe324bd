using Lucene.Net.Documents;
using Lucene.Net.Index;
using Lucene.Net.Search.Similarities;
using Lucene.Net.Store;
using Lucene.Net.Util;
using Triage.Search.Analysis;
using Triage.Search.Indexing;

namespace Triage.SearchBench;

/// <summary>The fields of the product's index written by Lucene alone, in memory, with the same analyser and as much room before a segment is written.</summary>
internal static class RawLucene
{
    private const LuceneVersion Version = LuceneVersion.LUCENE_48;

    private static readonly FieldType Unscored = new(TextField.TYPE_NOT_STORED) { IndexOptions = IndexOptions.DOCS_ONLY, OmitNorms = true };

    /// <summary>Indexes words that are there already, until they can be searched.</summary>
    public static RAMDirectory Index(IReadOnlyList<IndexedNote> notes, int threads)
    {
        var directory = new RAMDirectory();
        using var analyzer = new NoteAnalyzer();
        using var writer = new IndexWriter(directory, new IndexWriterConfig(Version, analyzer) { Similarity = new BM25Similarity(), RAMBufferSizeMB = 64 });
        if (threads == 1)
        {
            foreach (var note in notes)
            {
                writer.AddDocument(Document(note));
            }
        }
        else
        {
            Parallel.ForEach(notes, new ParallelOptions { MaxDegreeOfParallelism = threads }, note => writer.AddDocument(Document(note)));
        }

        using var reader = DirectoryReader.Open(writer, applyAllDeletes: true);
        return directory;
    }

    private static Document Document(IndexedNote note)
    {
        var document = new Document
        {
            new StringField("id", note.Id, Field.Store.YES),
            new StoredField("kind", note.Kind),
            new StoredField("title", note.Title),
            new SingleDocValuesField("weight", note.Hold switch { Hold.Held => 1.2f, Hold.Mended => 1.1f, _ => 1 }),
            new NumericDocValuesField("held", note.Hold == Hold.Held ? 1 : 0),
            new NumericDocValuesField("by-date", note.Date?.UtcTicks ?? 0),
        };
        if (note.Outcome is { } outcome)
            document.Add(new StoredField("outcome", outcome));
        if (note.Fix is { } fix)
            document.Add(new StoredField("fix", fix));
        if (note.Date is { } date)
            document.Add(new StoredField("date", date.ToString("O")));
        foreach (var (field, text) in Texts(note).Where(t => t.Text.Length > 0))
        {
            document.Add(new TextField(field, text, Field.Store.YES));
            document.Add(new TextField("every", text, Field.Store.NO));
            document.Add(new Field("word", text, Unscored));
        }

        foreach (var finding in note.FindingIds)
            document.Add(new StringField("finding", finding, Field.Store.YES));
        foreach (var name in note.WholeNames.Select(n => string.Concat(n.Where(char.IsLetterOrDigit)).ToLowerInvariant()).Distinct().Where(n => n.Length > 0))
            document.Add(new StringField("whole-name", name, Field.Store.NO));
        foreach (var (column, values) in Columns(note))
        {
            foreach (var value in values.Distinct())
                document.Add(new SortedSetDocValuesField(column, new BytesRef(value)));
        }

        return document;
    }

    /// <summary>The searched texts of a note, by field.</summary>
    public static (string Field, string Text)[] Texts(IndexedNote note) =>
    [
        ("name", Lines(note.Names)), ("says", Lines(note.Says)), ("complaint", Lines(note.Complaint)), ("cause", Lines(note.Causes)),
        ("log", Lines(note.Log)), ("body", note.Body),
    ];

    private static (string Column, IEnumerable<string> Values)[] Columns(IndexedNote note) =>
    [
        ("by-kind", [note.Kind]), ("by-device", note.DeviceIds), ("by-finding", note.FindingIds), ("by-cause", note.CauseIds),
        ("by-outcome", note.Outcome is { } outcome ? [outcome] : []),
    ];

    private static string Lines(IEnumerable<string> lines) => string.Join('\n', lines.Distinct());
}
