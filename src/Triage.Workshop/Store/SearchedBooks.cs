using Triage.Search.Indexing;
using Triage.Search.Queries;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Store;

/// <summary>
/// The full-text index of all open books. Filling it costs more than answering most questions, so it waits for the first search, or for
/// somebody to <see cref="Fill()"/> it in the background; from then on it changes with the books. Safe for several threads.
/// </summary>
internal sealed class SearchedBooks(OpenBooks books, Notebook notes) : IDisposable
{
    private readonly Lock changing = new();
    private Contents contents = new(books, notes);

    /// <summary>The search of what the books say now.</summary>
    public SnapshotSearch Open()
    {
        lock (changing)
        {
            var now = contents;
            return now.Filled ? now.Loans.Open() : now.Loans.OpenWhenAsked(() => Fill(now));
        }
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
                contents = new(books, notes);
            else
                contents.Change(changed, books, notes, onlyJobs);
        }
    }

    private void Fill(Contents of)
    {
        lock (changing)
            of.Fill();
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

        public Contents(OpenBooks books, Notebook notes)
        {
            (first, named) = (books, notes);
            Loans = new(Index);
        }

        public NoteIndex Index { get; } = NoteIndex.InMemory();

        public SearchLoans Loans { get; }

        public bool Filled { get; private set; }

        public void Fill()
        {
            if (Filled)
                return;
            foreach (var words in first.ForSearch(named))
                Index.Put(words);
            Index.Synonyms = SynonymRings.From(named.Knowledge);
            Index.Refresh();
            Filled = true;
        }

        public void Change(ChangedNotes changed, OpenBooks books, Notebook notes, bool onlyJobs)
        {
            foreach (var (before, after) in changed.Files)
            {
                Index.Remove(OpenBooks.IdAt((after ?? before)!.Place));
                if (after is { Note: null })
                    Index.Put(OpenBooks.Unread(after));
            }

            foreach (var id in onlyJobs ? changed.Ids : books.NamedIn(changed))
                Put(id, books, notes);
            if (!onlyJobs)
                Index.Synonyms = SynonymRings.From(notes.Knowledge);
            Index.Refresh();
        }

        private void Put(string id, OpenBooks books, Notebook notes)
        {
            Index.Remove(id);
            foreach (var note in books.Claiming(id))
            {
                Index.Remove(OpenBooks.IdAt(note.Place));
                Index.Put(OpenBooks.ForSearch(note, notes));
            }
        }
    }
}
