using Triage.Search.Queries;

namespace Triage.Workshop.Store;

/// <summary>The search of one snapshot, shared by the benches made from it.</summary>
internal sealed class SnapshotSearch(Lazy<NoteSearcher> searcher)
{
    public SearchResults Search(SearchQuery query)
    {
        var results = searcher.Value.Search(query);
        GC.KeepAlive(this);
        return results;
    }

    /// <summary>From now on it answers from what the index holds at this moment.</summary>
    public void Open() => _ = searcher.Value;
}
