using Triage.Search.Queries;

namespace Triage.Workshop.Store;

/// <summary>The search of one snapshot, shared by the benches made from it.</summary>
internal sealed class SnapshotSearch(NoteSearcher searcher)
{
    public SearchResults Search(SearchQuery query)
    {
        var results = searcher.Search(query);
        GC.KeepAlive(this);
        return results;
    }
}
