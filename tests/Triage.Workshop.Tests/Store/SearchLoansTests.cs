using System.Runtime.CompilerServices;
using Triage.Search;
using Triage.Search.Indexing;
using Triage.Workshop.Knowledge;
using Xunit;

namespace Triage.Workshop.Tests.Store;

/// <summary>A bench that is open for months closes the searches of snapshots that nobody holds.</summary>
public sealed class SearchLoansTests
{
    [Fact]
    public void SearchesThatNobodyHolds_AreClosed_AndTheHeldOneStaysOpen()
    {
        using var index = NoteIndex.InMemory();
        var loans = new SearchLoans(index, new());
        var held = loans.Open();
        OpenAndForget(loans, 50);
        GC.Collect();
        GC.WaitForPendingFinalizers();

        var last = loans.Open();

        Assert.InRange(loans.Lent, 2, 4);
        Assert.Equal(0, held.Search(new("anything")).Total);
        GC.KeepAlive(last);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void OpenAndForget(SearchLoans loans, int times)
    {
        for (var n = 0; n < times; n++)
            loans.Open();
    }
}
