using System.Collections.Concurrent;
using Triage.Notes.Kinds;
using Xunit;

namespace Triage.Workshop.Tests.Store;

/// <summary>The service and the command line on one folder at once.</summary>
public sealed class TwoWritersTests
{
    [Fact]
    public async Task TwoBenchesInOneProcess_AllEntriesStay_AndTheFileIsAlwaysWhole()
    {
        using var book = new SmallBook();
        await using var one = book.Open();
        await using var other = book.Open();
        var written = new ConcurrentBag<string>();
        using var stop = new CancellationTokenSource();
        var reader = Task.Run(() => ReadsOnlyWholeNotes(book, stop.Token), TestContext.Current.CancellationToken);

        Parallel.For(0, 4, new() { CancellationToken = TestContext.Current.CancellationToken }, writer =>
        {
            var live = writer % 2 == 0 ? one : other;
            for (var n = 0; n < 25; n++)
            {
                Assert.Null(live.Steps.Line(SmallBook.JobId, $"writer {writer} line {n}").Refused);
                written.Add($"writer {writer} line {n}");
            }
        });
        await stop.CancelAsync();

        Assert.True(await reader > 0);
        Assert.Equal(written.Order(), SmallBook.Lines(book.OnDisk()!).Order());
        one.Rescan();
        Assert.Equal(written.Order(), SmallBook.Lines(one.Current.Notes.Find<Job>(SmallBook.JobId)!).Order());
    }

    [Fact]
    public async Task TwoPrograms_AllEntriesStay()
    {
        using var book = new SmallBook();
        await using var live = book.Open(watch: true);
        using var other = Writer.Start("lines", book.Folder, SmallBook.JobId, "other", "40");
        Assert.Equal("open", other.Next());

        for (var n = 0; n < 40; n++)
            Assert.Null(live.Steps.Line(SmallBook.JobId, $"this {n}").Refused);
        var said = other.Rest();

        IEnumerable<string> all = [.. Enumerable.Range(0, 40).Select(n => $"this {n}"), .. Enumerable.Range(0, 40).Select(n => $"other {n}")];
        Assert.Equal(40, said.Count);
        Assert.Equal(all.Order(), SmallBook.Lines(book.OnDisk()!).Order());
        await Eventually.Is(live, b => SmallBook.Lines(b.Notes.Find<Job>(SmallBook.JobId)!).Count() == 80);
    }

    [Fact]
    public async Task TwoBenchesTakingIn_EveryMachineHasANumberOfItsOwn()
    {
        using var book = new SmallBook();
        await using var one = book.Open();
        await using var other = book.Open();
        var ids = new ConcurrentBag<string>();

        Parallel.ForEach((LiveBench[])[one, other], new() { CancellationToken = TestContext.Current.CancellationToken }, live =>
        {
            for (var n = 0; n < 15; n++)
            {
                var taken = live.Steps.TakeIn(new() { Machine = "a box", Complaint = $"hums {n}" });
                Assert.Null(taken.Refused);
                ids.Add(taken.Job!.Id);
            }
        });

        Assert.Equal(30, ids.Distinct().Count());
        Assert.All(ids, id => Assert.Equal(id, book.OnDisk($"jobs/2026/{id}.md")!.Id));
    }

    private static int ReadsOnlyWholeNotes(SmallBook book, CancellationToken stop)
    {
        var read = 0;
        for (; !stop.IsCancellationRequested || read == 0; read++)
            Assert.NotNull(book.OnDisk());
        return read;
    }
}
