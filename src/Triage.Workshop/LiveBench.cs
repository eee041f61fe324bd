using System.Collections.Immutable;
using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Notes.Linting;
using Triage.Notes.Parsing;
using NoteIndex = Triage.Search.Indexing.NoteIndex;
using IndexedNote = Triage.Search.Indexing.IndexedNote;
using Triage.Search.Queries;
using Triage.Search.Words;
using Triage.Workshop.Knowledge;
using Triage.Workshop.Steps;
using Triage.Workshop.Store;

namespace Triage.Workshop;

/// <summary>
/// The open bench: books on disk, watched, and the newest snapshot of what they say. One writer at a time; readers take
/// <see cref="Current"/> and keep it as long as they like.
/// </summary>
public sealed class LiveBench : IAsyncDisposable
{
    private readonly Lock changing = new();
    private readonly BenchOptions options;
    private readonly ImmutableArray<BookFolder> folders;
    private readonly NoteIndex index = NoteIndex.InMemory();
    private readonly CancellationTokenSource closing = new();
    private readonly List<Task> watching = [];
    private ImmutableDictionary<string, OpenBook> books = ImmutableDictionary.Create<string, OpenBook>(StringComparer.Ordinal);
    private Bench current = null!;

    private LiveBench(BenchOptions options)
    {
        this.options = options;
        folders = [.. options.Books.Select(b => new BookFolder(b, options.Clock))];
        Steps = new(this);
    }

    /// <summary>The newest snapshot.</summary>
    public Bench Current => Volatile.Read(ref current);

    /// <summary>The job's steps, from taking in to following up.</summary>
    public JobSteps Steps { get; }

    public TimeProvider Clock => options.Clock;

    /// <summary>Raised after a new snapshot is in place.</summary>
    public event Action<Bench>? Changed;

    /// <summary>Book to which new notes go; null when none may be written.</summary>
    internal BookFolder? Home => folders.FirstOrDefault(f => f.Source.Writable);

    /// <summary>Reads all books and keeps them in step with their folders.</summary>
    /// <exception cref="DirectoryNotFoundException">A book's folder is not there; the message names it.</exception>
    public static LiveBench Open(BenchOptions options)
    {
        var missing = options.Books.FirstOrDefault(b => !Directory.Exists(b.Folder));
        if (missing is not null)
            throw new DirectoryNotFoundException($"The folder of book “{missing.Name}” is not there: {missing.Folder}. Name another with --book, or create it.");
        var bench = new LiveBench(options);
        bench.Rescan();
        if (options.Watch)
            bench.watching.AddRange(bench.folders.Select(bench.Watch));
        return bench;
    }

    /// <summary>Reads every note again. A folder that is gone keeps its last known notes.</summary>
    public void Rescan()
    {
        lock (changing)
        {
            foreach (var folder in folders.Where(f => Directory.Exists(f.Source.Folder)))
                books = books.SetItem(folder.Source.Name, OpenBook.Read(folder.Source));
            var read = books.Values.Select(b => b.Index.ToBook()).ToList();
            var notes = Notebook.Of(read.SelectMany(b => b.Notes));
            index.Clear();
            index.Synonyms = SynonymRings.From(notes.Knowledge);
            foreach (var note in read.SelectMany(b => b.Notes))
                index.Put(IndexedNote.From(note, notes.Find<Note>));
            foreach (var unreadable in read.SelectMany(b => b.SearchOnly))
                index.Put(IndexedNote.Unreadable(unreadable.Place.Path, unreadable.Text.Content));
            Publish(notes, CountedJobs.Of(notes, TrustOf), Recogniser.Build(notes.Of<Finding>()));
        }
    }

    /// <summary>Reads the named notes again and publishes one snapshot with all of them.</summary>
    internal void Reread(BookFolder folder, IEnumerable<string> paths)
    {
        lock (changing)
        {
            var before = books[folder.Source.Name];
            var touched = paths.ToList();
            var after = touched.Aggregate(before, (book, path) => book.Reread(folder, path));
            if (ReferenceEquals(before, after))
                return;
            books = books.SetItem(folder.Source.Name, after);
            var changed = ChangedNotes.Between(before, after, touched);
            if (changed.OnlyJobs)
                Take(changed);
            else
                Rescan();
        }
    }

    /// <summary>The book in which a note lies, when it may be written.</summary>
    internal BookFolder? Writable(NotePlace place) => folders.FirstOrDefault(f => f.Source.Name == place.Book && f.Source.Writable);

    private void Take(ChangedNotes changed)
    {
        var (notes, counted) = (Current.Notes, Current.Counted);
        foreach (var gone in changed.Gone)
        {
            (notes, counted) = (notes.Without(gone.Id), counted.Without(gone.Id));
            index.Remove(gone.Id);
        }

        foreach (var job in changed.Jobs)
        {
            notes = notes.With(job);
            counted = counted.With(job, notes, TrustOf(job));
        }

        foreach (var reading in changed.Readings)
            PutInIndex(reading, notes);
        Publish(notes, counted, Current.Recogniser);
    }

    private void PutInIndex(NoteReading reading, Notebook notes)
    {
        if (reading.Note is { } note)
            index.Put(IndexedNote.From(note, notes.Find<Note>));
        else if (reading.IsNote)
            index.Put(IndexedNote.Unreadable(reading.Place.Path, reading.Text.Content));
    }

    private void Publish(Notebook notes, CountedJobs counted, Recogniser recogniser)
    {
        index.Refresh();
        var all = books;
        var problems = new Lazy<ImmutableArray<Problem>>(() => [.. Linter.Check([.. options.Books.Select(b => all[b.Name].Index.ToBook())]).SelectMany(b => b.Problems)]);
        var next = new Bench(notes, counted, recogniser, index.OpenSearcher(), problems, SettingsFile.Read(options.Books), (current?.Version ?? 0) + 1);
        Volatile.Write(ref current, next);
        Changed?.Invoke(next);
    }

    private double TrustOf(Job job) => TrustWeights.Of(options.Books.FirstOrDefault(b => b.Name == job.Place.Book)?.Trust ?? Trust.Own);

    private async Task Watch(BookFolder folder)
    {
        using var watch = new FolderWatch(folder.Source.Folder);
        try
        {
            await foreach (var batch in watch.Batches(closing.Token))
            {
                if (batch is null)
                    Rescan();
                else
                    Reread(folder, batch.Select(p => Path.GetRelativePath(folder.Source.Folder, p).Replace('\\', '/')));
            }
        }
        catch (OperationCanceledException) when (closing.IsCancellationRequested)
        {
        }
    }

    public async ValueTask DisposeAsync()
    {
        await closing.CancelAsync();
        await Task.WhenAll(watching);
        closing.Dispose();
        index.Dispose();
    }
}

/// <summary>Which books to open and how.</summary>
public sealed record BenchOptions
{
    public required ImmutableArray<BookSource> Books { get; init; }

    public TimeProvider Clock { get; init; } = TimeProvider.System;

    /// <summary>Keep in step with the folders; off for a single command.</summary>
    public bool Watch { get; init; } = true;
}
