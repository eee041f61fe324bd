using Lucene.Net.Index;
using Lucene.Net.Search;
using Lucene.Net.Store;
using Triage.Search.Analysis;
using Triage.Search.Indexing;
using Triage.Search.Queries;
using Triage.Search.Words;

namespace Triage.Search;

/// <summary>
/// Full-text index of all notes; a cache that can be thrown away. One process writes it at a time. What was put is found after
/// <see cref="Refresh"/>, and kept on disk after <see cref="Commit"/>. Safe for several threads.
/// </summary>
public sealed class NoteIndex : IDisposable
{
    // a shelf of 100,000 notes comes in two segments, not eight: each question looks every word up in every segment
    private const double MegabytesOfSegment = 64;

    private readonly Lucene.Net.Store.Directory directory;
    private readonly NoteAnalyzer analyzer = new();
    private readonly IndexWriter writer;
    private readonly SearcherManager searchers;
    private readonly FilterColumns columns = new();

    private NoteIndex(Lucene.Net.Store.Directory directory, string? startedAnew)
    {
        this.directory = directory;
        StartedAnew = startedAnew;
        writer = new IndexWriter(directory, Writing());
        searchers = new SearcherManager(writer, applyAllDeletes: true, new Searching(columns));
    }

    /// <summary>Why a stored index was thrown away, so that all notes have to be put again; null when it was not.</summary>
    public string? StartedAnew { get; }

    /// <summary>Words that mean the same, for questions asked from now on.</summary>
    public SynonymRings Synonyms { get; set; } = SynonymRings.None;

    /// <summary>Reads findings out of questions asked from now on; null, or a null value: none are read.</summary>
    public Lazy<Recogniser>? Understands { get; set; }

    public static NoteIndex InMemory() => new(new RAMDirectory(), null);

    /// <summary>Opens the index in a folder that holds nothing else, or makes one. A damaged or outdated one is emptied.</summary>
    /// <exception cref="IOException">Another process has it open, or the folder cannot be written.</exception>
    public static NoteIndex Open(string folder)
    {
        var directory = FSDirectory.Open(System.IO.Directory.CreateDirectory(folder));
        try
        {
            return new NoteIndex(directory, StoredIndex.EmptyIfUnusable(directory));
        }
        catch (LockObtainFailedException e)
        {
            directory.Dispose();
            throw new IOException(SearchTexts.InUse(folder), e);
        }
    }

    /// <summary>Adds many notes, on all processors; their ids differ from each other and from those in the index.</summary>
    /// <param name="words">What is searched of a note; called by several threads.</param>
    public void AddAll<T>(IReadOnlyList<T> notes, Func<T, IndexedNote> words) => Slices.Add(writer, Writing, notes, words);

    /// <summary>Adds a note, or replaces the one with its id.</summary>
    public void Put(IndexedNote note) => writer.UpdateDocument(new Term(NoteDocument.Id, note.Id), NoteDocument.From(note));

    public void Remove(string id) => writer.DeleteDocuments(new Term(NoteDocument.Id, id));

    public void Clear() => writer.DeleteAll();

    /// <summary>From now on, new searchers see everything that was put and removed before.</summary>
    public void Refresh() => searchers.MaybeRefreshBlocking();

    /// <summary>Makes everything put and removed so far survive a kill.</summary>
    /// <exception cref="IOException">The folder is gone, read-only or full.</exception>
    public void Commit()
    {
        writer.SetCommitData(StoredIndex.Key);
        writer.Commit();
    }

    /// <summary>The index as it was at the last refresh; never changes. Dispose it when done.</summary>
    public NoteSearcher OpenSearcher() => OpenSearcher(Ranking.Whole);

    internal NoteSearcher OpenSearcher(Ranking parts) => new(searchers, columns, analyzer, Synonyms, Understands, parts);

    /// <summary>Commits and closes. What cannot be stored any more (the folder is gone, the disk full) is left out: the notes still have it.</summary>
    public void Dispose()
    {
        searchers.Dispose();
        try
        {
            Commit();
            writer.Dispose();
        }
        catch (IOException)
        {
            Abandon();
        }

        analyzer.Dispose();
        directory.Dispose();
    }

    private IndexWriterConfig Writing() => new(NoteAnalyzer.Lucene, analyzer)
    {
        Similarity = new FieldBm25(),
        MergedSegmentWarmer = new Warming(columns),
        RAMBufferSizeMB = MegabytesOfSegment,
    };

    private void Abandon()
    {
        try
        {
            writer.Rollback();
        }
        catch (IOException)
        {
            // the folder itself is gone: nothing is left to close
        }
    }

    /// <summary>Reads the filter values of new segments before the first question waits for them.</summary>
    private sealed class Searching(FilterColumns columns) : SearcherFactory
    {
        public override IndexSearcher NewSearcher(IndexReader reader)
        {
            foreach (var leaf in reader.Leaves)
            {
                columns.Of(leaf.AtomicReader);
            }

            return new PartedSearcher(reader) { Similarity = new FieldBm25() };
        }
    }

    /// <summary>The same for merged segments, in the background where they are merged.</summary>
    private sealed class Warming(FilterColumns columns) : IndexWriter.IndexReaderWarmer
    {
        public override void Warm(AtomicReader reader) => columns.Of(reader);
    }
}
