using System.Collections.Immutable;
using Triage.Notes;
using Triage.Notes.Files;
using Triage.Notes.Kinds;
using Triage.Search.Words;
using Triage.Workshop.Books;
using Triage.Workshop.Knowledge;
using Triage.Workshop.Model;

namespace Triage.Workshop;

/// <summary>
/// Books on disk, watched, and the newest snapshot of what they say. One writer at a time; readers take
/// <see cref="Current"/> and keep it as long as they like.
/// </summary>
internal sealed class LiveBooks : IAsyncDisposable
{
    private readonly Lock changing = new();
    private readonly BenchOptions options;
    private readonly ImmutableArray<BookFolder> folders;
    private readonly SearchedBooks searched;
    private readonly CancellationTokenSource closing = new();
    private readonly Mishaps mishaps = new();
    private readonly HashSet<BookFolder> waitedFor = [];
    private bool refitting;
    private Task background = Task.CompletedTask;
    private readonly List<Task> watching = [];
    private OpenBooks books;
    private SettingsFile settings;
    private Bench current = null!;

    private LiveBooks(BenchOptions options)
    {
        this.options = options;
        folders = [.. options.Books.Select(b => new BookFolder(b, options.Clock) { Disk = options.Disk })];
        books = new([.. options.Books.Select(OpenBook.Read)]);
        settings = SettingsFile.Of(options.Books);
        searched = new(books, books.Notebook, mishaps);
    }

    /// <summary>The newest snapshot.</summary>
    public Bench Current => Volatile.Read(ref current);

    /// <summary>The open books, in the order in which they were named.</summary>
    public ImmutableArray<BookSource> Books => options.Books;

    public TimeProvider Clock => options.Clock;

    /// <summary>Raised after a new snapshot is in place.</summary>
    public event Action<Bench>? Changed;

    /// <summary>Folder for what is not a note, in the book that is written to; null when none may be written, or it leads elsewhere.</summary>
    public string? Aside => Home is { } home && InBook.At(home.Source.Folder, ".bench") is not null ? home.Aside : null;

    /// <summary>Book to which new notes go; null when none may be written.</summary>
    public BookFolder? Home => folders.FirstOrDefault(f => f.Source.Writable);

    /// <summary>Whether changes of all books are seen; null when they were opened without being watched.</summary>
    public bool? Watching => options.Watch ? watching.TrueForAll(w => !w.IsCompleted) : null;

    /// <summary>Reads all books and keeps them in step with their folders.</summary>
    /// <exception cref="DirectoryNotFoundException">A book's folder is not there; the message names it.</exception>
    /// <exception cref="ArgumentException">Two books have one name.</exception>
    public static LiveBooks Open(BenchOptions options)
    {
        var missing = options.Books.FirstOrDefault(b => !Directory.Exists(b.Folder));
        if (missing is not null)
            throw new DirectoryNotFoundException($"The folder of book “{missing.Name}” is not there: {missing.Folder}. Name another with --book, or create it.");
        var twice = options.Books.GroupBy(b => b.Name).FirstOrDefault(g => g.Skip(1).Any());
        if (twice is not null)
            throw new ArgumentException($"Two books are called “{twice.Key}”: {string.Join(" and ", twice.Select(b => b.Folder))}. Give one of them another name.");
        foreach (var source in options.Books.Where(b => b.Writable))
            new BookFolder(source, options.Clock).CleanUp();
        // watches begin before the first reading, so that nothing changes between the two unseen
        ImmutableArray<FolderWatch> watches = options.Watch ? [.. options.Books.Select(b => new FolderWatch(b.Folder))] : [];
        var bench = new LiveBooks(options);
        bench.Begin();
        bench.watching.AddRange(watches.Select((watch, i) => bench.Follow(bench.folders[i], watch)));
        return bench;
    }

    /// <summary>Looks at every file again. A folder that is gone keeps its last known notes.</summary>
    public void Rescan()
    {
        foreach (var folder in folders)
            Reread(folder, [""], patient: false);
    }

    /// <summary>Reads again what changed and publishes one snapshot with all of it. A folder that is gone keeps its last known notes.</summary>
    /// <param name="paths">Files or folders, relative to the book; an empty one means all of it.</param>
    /// <param name="patient">A file that an editor has begun to save and not ended stays as it was, until it has been left alone.</param>
    public void Reread(BookFolder folder, IReadOnlyCollection<string> paths, bool patient = true)
    {
        lock (changing)
        {
            var before = books[folder.Source];
            var (after, changed) = Reread(before, folder, paths, patient);
            var newSettings = settings;
            if (paths.Any(p => p.Length == 0 || p == SettingsFile.Name) && folder.IsThere)
                (after, newSettings) = SettingsOf(after, patient);
            var told = !after.BeingSaved.Keys.ToHashSet().SetEquals(before.BeingSaved.Keys);
            if (changed.Files.IsEmpty && !told && newSettings.IsAsBefore(settings))
                return;
            var onlyJobs = IsOnlyJobs(changed);
            (books, settings) = (books.With(after), newSettings);
            TakeOrAnew(changed, onlyJobs && IsOnlyJobs(changed));
            if (!after.BeingSaved.IsEmpty && options.Watch && waitedFor.Add(folder))
                background = Task.WhenAll(background, WaitFor(folder));
        }
    }

    /// <summary>The book in which a note lies, when it may be written.</summary>
    public BookFolder? Writable(NotePlace place) => folders.FirstOrDefault(f => f.Source.Name == place.Book && f.Source.Writable);

    public BookFolder? FolderOf(BookSource source) => folders.FirstOrDefault(f => f.Source.Name == source.Name);

    public BookFolder? FolderOf(NotePlace place) => folders.FirstOrDefault(f => f.Source.Name == place.Book);

    /// <inheritdoc cref="OpenBooks.Unusable"/>
    public (NotePlace Place, string Why)? Unusable(string id)
    {
        lock (changing)
            return books.Unusable(id);
    }

    /// <summary>A settings file that is being saved is read when that is done.</summary>
    private (OpenBook Book, SettingsFile Settings) SettingsOf(OpenBook book, bool patient) =>
        patient && SettingsFile.BookOf(options.Books) is { } source && FolderOf(source)!.IsBeingSaved(SettingsFile.Name)
            ? (book with { BeingSaved = book.BeingSaved.SetItem(SettingsFile.Name, TimeProvider.System.GetUtcNow()) }, settings)
            : (book with { BeingSaved = book.BeingSaved.Remove(SettingsFile.Name) }, SettingsFile.Of(options.Books));

    /// <summary>Looks again at files that were being saved, until all of them are done.</summary>
    private async Task WaitFor(BookFolder folder)
    {
        while (true)
        {
            await Task.Delay(SavedNow.Quiet / 2, closing.Token).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            lock (changing)
            {
                if (closing.IsCancellationRequested || books[folder.Source].BeingSaved.IsEmpty)
                {
                    waitedFor.Remove(folder);
                    return;
                }
            }

            Reread(folder, [.. books[folder.Source].BeingSaved.Keys]);
        }
    }

    private static (OpenBook After, ChangedNotes Changed) Reread(OpenBook before, BookFolder folder, IEnumerable<string> paths, bool patient)
    {
        try
        {
            var files = paths.SelectMany(before.NotesAt).Distinct(StringComparer.Ordinal).ToList();
            var after = files.Aggregate(before, (book, path) => patient ? book.RereadPatiently(path) : book.Reread(path));
            // what seemed deleted one by one was the folder going away
            return folder.IsThere ? (after, ChangedNotes.Between(before, after, files)) : (before, ChangedNotes.None);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return (before, ChangedNotes.None);
        }
    }

    /// <summary>Jobs come and go all day; everything else changes what all answers rest on.</summary>
    private bool IsOnlyJobs(ChangedNotes changed) => changed.Ids.All(id => books.Claiming(id).All(n => n is Job));

    /// <summary>What the program fails at with one change is said, and the rest is taken over from the beginning.</summary>
    private void TakeOrAnew(ChangedNotes changed, bool onlyJobs)
    {
        if (onlyJobs)
            mishaps.Forget(changed.Paths);
        else
            mishaps.Clear();
        mishaps.Or(changed.Paths.FirstOrDefault(""), "taking over what changed in this note", () => Take(changed, onlyJobs), _ => mishaps.Or("", "reading the books anew", () => PublishAnew(books.Notebook), _ => false));
    }

    private bool Take(ChangedNotes changed, bool onlyJobs)
    {
        var notes = onlyJobs ? changed.Ids.Aggregate(Current.Notes, WithOrWithout) : books.Notebook;
        searched.Change(changed, books, notes, onlyJobs);
        if (onlyJobs)
            PublishJobs(notes, Current.Counted.Recounted(changed.Ids, notes, TrustOf, mishaps));
        else
            PublishAnew(notes);
        return true;
    }

    /// <summary>Fitting the epoch takes a second with ten thousand jobs: answers do not wait for it, the next snapshot has it.</summary>
    private void PublishJobs(Notebook notes, CountedJobs counted)
    {
        Publish(notes, options.Watch ? counted : counted.Refitted(), Current.Understands);
        if (!Current.Counted.RefitDue || refitting)
            return;
        refitting = true;
        background = Task.WhenAll(background, Task.Run(() => mishaps.Or("", "fitting the learned numbers anew", Refit, _ => refitting = false)));
    }

    private bool Refit()
    {
        while (true)
        {
            var counted = Current.Counted;
            var refitted = counted.Refitted();
            lock (changing)
            {
                var same = ReferenceEquals(Current.Counted, counted);
                if (same && !closing.IsCancellationRequested)
                    Publish(Current.Notes, refitted, Current.Understands);
                refitting = Current.Counted.RefitDue && !closing.IsCancellationRequested;
                if (!refitting)
                    return true;
            }
        }
    }

    private Notebook WithOrWithout(Notebook notes, string id) => books.Claiming(id) is [var only] ? notes.With(only) : notes.Without(id);

    private void Begin()
    {
        PublishAnew(books.Notebook);
        if (options.Watch)
            background = Task.Run(() => mishaps.Or("", "getting ready", GetReady, _ => false));
    }

    /// <summary>What the first question would wait for.</summary>
    private bool GetReady()
    {
        searched.Fill();
        if (options.Meaning is not null)
            Current.Recogniser.GetReady();
        foreach (var kind in Current.Notes.Of<DeviceClass>().TakeWhile(_ => !closing.IsCancellationRequested))
            _ = Current.AnswerFor(new("", kind.Name) { Class = kind.Id }).Answer?.Next?.Turning;
        return true;
    }

    /// <summary>Publishes what rests on other knowledge than before.</summary>
    private bool PublishAnew(Notebook notes)
    {
        Publish(notes, Counted(notes), new(() => Recogniser.Build(notes.Of<Finding>(), options.Meaning, notes.Of<DeviceClass>())));
        return true;
    }

    private CountedJobs Counted(Notebook notes)
    {
        if (options.Fits is not { } fits)
            return CountedJobs.Of(notes, TrustOf, mishaps);
        var said = books.Fingerprint;
        var known = fits.Find(said);
        var counted = CountedJobs.Of(notes, TrustOf, mishaps, known);
        if (known is null)
            fits.Keep(said, counted.Learned.Epoch.Fit);
        return counted;
    }

    private void Publish(Notebook notes, CountedJobs counted, Lazy<Recogniser> recogniser)
    {
        var (all, said, kept) = (books, settings, folders.Select(f => f.Kept));
        var problems = new Lazy<ImmutableArray<Problem>>(() => [.. said.AmongNotes(notes.Of<PartClass>()), .. all.Problems, .. all.MissingFiles, .. kept.SelectMany(k => k.Problems), .. all.BeingSaved]);
        var next = new Bench(new(notes, counted, said.Settings, mishaps), recogniser, searched.Open(), problems, (current?.Version ?? 0) + 1);
        Volatile.Write(ref current, next);
        Changed?.Invoke(next);
    }

    private double TrustOf(Job job) => TrustWeights.Of(options.Books.FirstOrDefault(b => b.Name == job.Place.Book)?.Trust ?? Trust.Own);

    /// <summary>As long as the bench is open: a watch that breaks is said, and another takes its place.</summary>
    private async Task Follow(BookFolder folder, FolderWatch watch)
    {
        while (!closing.IsCancellationRequested)
        {
            try
            {
                using (watch)
                {
                    await foreach (var batch in watch.Batches(closing.Token))
                        Reread(folder, batch);
                }
            }
            catch (OperationCanceledException) when (closing.IsCancellationRequested)
            {
                return;
            }
            catch (Exception e) when (e is not OutOfMemoryException)
            {
                mishaps.Meet("", $"watching the folder of book {folder.Source.Name}", e);
            }

            await Task.Delay(SavedNow.Quiet, closing.Token).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            watch = new(folder.Source.Folder);
            Reread(folder, [""]);
        }
    }

    public async ValueTask DisposeAsync()
    {
        await closing.CancelAsync();
        await Task.WhenAll(watching);
        await background;
        closing.Dispose();
        searched.Dispose();
    }
}
