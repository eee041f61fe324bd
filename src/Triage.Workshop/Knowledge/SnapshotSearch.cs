using Triage.Search.Queries;

namespace Triage.Workshop.Knowledge;

/// <summary>The search of one snapshot, shared by the benches made from it.</summary>
/// <param name="lend">Called once, with the first question or with <see cref="Open"/>, under the lock.</param>
internal sealed class SnapshotSearch(Func<NoteSearcher> lend, Lock opening)
{
    private NoteSearcher? searcher;

    public SearchResults Search(SearchQuery query)
    {
        var results = Opened().Search(query);
        GC.KeepAlive(this);
        return results;
    }

    /// <summary>From now on it answers from what the index holds at this moment.</summary>
    public void Open() => Opened();

    private NoteSearcher Opened()
    {
        if (Volatile.Read(ref searcher) is { } open)
            return open;
        lock (opening)
        {
            searcher ??= lend();
            return searcher;
        }
    }
}
