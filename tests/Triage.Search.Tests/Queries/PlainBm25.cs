using Lucene.Net.Analysis.En;
using Lucene.Net.Documents;
using Lucene.Net.Index;
using Lucene.Net.Search;
using Lucene.Net.Search.Similarities;
using Lucene.Net.Store;
using Lucene.Net.Util;
using Triage.Search.Analysis;
using Triage.Search.Indexing;

namespace Triage.Search.Tests.Queries;

/// <summary>What the product is held against: Lucene's English analyser and BM25 over all text of a note in one field, any word of the question.</summary>
internal sealed class PlainBm25 : IDisposable
{
    private const string Text = "text";

    private readonly RAMDirectory directory = new();
    private readonly EnglishAnalyzer analyzer = new(LuceneVersion.LUCENE_48);
    private readonly DirectoryReader reader;

    public PlainBm25(IEnumerable<IndexedNote> notes)
    {
        using (var writer = new IndexWriter(directory, new IndexWriterConfig(LuceneVersion.LUCENE_48, analyzer) { Similarity = new BM25Similarity() }))
        {
            foreach (var note in notes)
            {
                writer.AddDocument(
                [
                    new StringField("id", note.Id, Field.Store.YES),
                    new TextField(Text, string.Join('\n', NoteField.All.Select(f => f.Text(note))), Field.Store.NO),
                ]);
            }
        }

        reader = DirectoryReader.Open(directory);
    }

    public List<string> Find(string question)
    {
        var any = new BooleanQuery();
        foreach (var term in Token.Of(question, analyzer))
        {
            any.Add(new TermQuery(new(Text, term.Text)), Occur.SHOULD);
        }

        var searcher = new IndexSearcher(reader) { Similarity = new BM25Similarity() };
        return [.. searcher.Search(any, 40).ScoreDocs.Select(d => searcher.Doc(d.Doc).Get("id"))];
    }

    public void Dispose()
    {
        reader.Dispose();
        directory.Dispose();
        analyzer.Dispose();
    }
}
