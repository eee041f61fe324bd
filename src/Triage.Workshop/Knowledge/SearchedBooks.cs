using Triage.Notes.Kinds;
using Triage.Search;
using Triage.Search.Queries;
using Triage.Search.Words;
using Triage.Workshop.Books;

namespace Triage.Workshop.Knowledge;

/// <summary>
/// The full-text index of all open books. Filling it costs more than answering most questions, so it waits for the first search, or for
/// somebody to <see cref="Fill()"/> it in the background; from then on it changes with the books. Safe for several threads.
/// </summary>
internal sealed class SearchedBooks : IDisposable
{
    private readonly Lock changing = new();
    private readonly Mishaps mishaps;
    private Contents contents;

    public SearchedBooks(OpenBooks books, Notebook notes, Mishaps mishaps) => (this.mishaps, contents) = (mishaps, new(books, notes, mishaps, changing));

    /// <summary>The search of what the books say now.</summary>
    public SnapshotSearch Open()
    {
        lock (changing)
            return contents.Open();
    }

    /// <summary>Puts all notes into the index, unless they are there.</summary>
    public void Fill()
    {
        lock (changing)
            contents.Fill();
    }

    /// <summary>Takes over what changed in the books.</summary>
    /// <param name="onlyJobs">No other note has words that this changes.</param>
    public void Change(ChangedNotes changed, OpenBooks books, Notebook notes, bool onlyJobs)
    {
        lock (changing)
        {
            // what nobody has searched yet is left to the snapshots of before
            if (!contents.Filled)
                contents = new(books, notes, mishaps, changing);
            else
                contents.Change(changed, books, notes, onlyJobs);
        }
    }

    public void Dispose()
    {
        lock (changing)
            contents.Index.Dispose();
    }

    private sealed class Contents
    {
        private readonly OpenBooks first;
        private readonly Notebook named;
        private readonly Mishaps mishaps;
        private readonly SearchLoans loans;
        private readonly List<WeakReference<SnapshotSearch>> unopened = [];

        public Contents(OpenBooks books, Notebook notes, Mishaps mishaps, Lock opening)
        {
            (first, named, this.mishaps) = (books, notes, mishaps);
            loans = new(Index, opening);
        }

        public NoteIndex Index { get; } = NoteIndex.InMemory();

        public bool Filled { get; private set; }

        public SnapshotSearch Open()
        {
            if (Filled)
                return loans.Open();
            var search = loans.OpenWhenAsked(Fill);
            unopened.Add(new(search));
            return search;
        }

        public void Fill()
        {
            if (Filled)
                return;
            Index.AddAll(first.Readings, r => OpenBooks.ForSearch(r, named, mishaps));
            Understand(named);
            Index.Refresh();
            Filled = true;
        }

        public void Change(ChangedNotes changed, OpenBooks books, Notebook notes, bool onlyJobs)
        {
            // snapshots of before go on saying what they said
            foreach (var search in unopened)
            {
                if (search.TryGetTarget(out var held))
                    held.Open();
            }

            unopened.Clear();
            foreach (var (before, after) in changed.Files)
            {
                Index.Remove(OpenBooks.IdAt((after ?? before)!.Place));
                if (after is { Note: null })
                    Index.Put(OpenBooks.Unread(after));
            }

            foreach (var id in onlyJobs ? changed.Ids : books.NamedIn(changed))
                Put(id, books, notes);
            if (!onlyJobs)
                Understand(notes);
            Index.Refresh();
        }

        private void Understand(Notebook notes)
        {
            Index.Synonyms = SynonymRings.From(notes.Knowledge);
            Index.Understands = new(() => Recogniser.Build(notes.Knowledge.OfType<Finding>(), machines: notes.Knowledge.OfType<DeviceClass>()));
        }

        private void Put(string id, OpenBooks books, Notebook notes)
        {
            Index.Remove(id);
            foreach (var note in books.Claiming(id))
            {
                Index.Remove(OpenBooks.IdAt(note.Place));
                Index.Put(OpenBooks.ForSearch(note, notes, mishaps));
            }
        }
    }
}
