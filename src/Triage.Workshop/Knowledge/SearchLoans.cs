using Triage.Search;
using Triage.Search.Queries;

namespace Triage.Workshop.Knowledge;

/// <summary>
/// Opens the search of each snapshot, and closes it when nobody holds the snapshot any more: readers keep one as long as they like and
/// never say when they are done, but an open search keeps old index files. Safe for several threads.
/// </summary>
/// <param name="opening">Held while a search is opened.</param>
internal sealed class SearchLoans(NoteIndex index, Lock opening)
{
    private readonly List<(WeakReference<SnapshotSearch> Borrower, NoteSearcher Searcher)> loans = [];

    /// <summary>Searches not yet closed.</summary>
    public int Lent
    {
        get
        {
            lock (opening)
                return loans.Count;
        }
    }

    public SnapshotSearch Open()
    {
        var search = OpenWhenAsked(() => { });
        search.Open();
        return search;
    }

    /// <summary>A search that is opened with its first question.</summary>
    /// <param name="before">What has to be done before it can be opened.</param>
    public SnapshotSearch OpenWhenAsked(Action before)
    {
        SnapshotSearch search = null!;
        search = new(
            () =>
            {
                before();
                return Lend(search);
            },
            opening);
        return search;
    }

    private NoteSearcher Lend(SnapshotSearch borrower)
    {
        loans.RemoveAll(GivenBack);
        var opened = index.OpenSearcher();
        loans.Add((new(borrower), opened));
        return opened;
    }

    private static bool GivenBack((WeakReference<SnapshotSearch> Borrower, NoteSearcher Searcher) loan)
    {
        if (loan.Borrower.TryGetTarget(out _))
            return false;
        loan.Searcher.Dispose();
        return true;
    }
}
