using Triage.Search.Indexing;
using Triage.Search.Queries;

namespace Triage.Workshop.Store;

/// <summary>
/// Opens the search of each snapshot, and closes it when nobody holds the snapshot any more: readers keep one as long as they like and
/// never say when they are done, but an open search keeps old index files.
/// </summary>
internal sealed class SearchLoans(NoteIndex index)
{
    private readonly List<(WeakReference<SnapshotSearch> Borrower, NoteSearcher Searcher)> loans = [];

    /// <summary>Searches not yet closed.</summary>
    public int Lent => loans.Count;

    /// <summary>Not safe for several threads.</summary>
    public SnapshotSearch Open()
    {
        loans.RemoveAll(GivenBack);
        var opened = index.OpenSearcher();
        var search = new SnapshotSearch(opened);
        loans.Add((new(search), opened));
        return search;
    }

    private static bool GivenBack((WeakReference<SnapshotSearch> Borrower, NoteSearcher Searcher) loan)
    {
        if (loan.Borrower.TryGetTarget(out _))
            return false;
        loan.Searcher.Dispose();
        return true;
    }
}
