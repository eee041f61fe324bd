using Triage.Notes.Kinds;
using Xunit;

namespace Triage.Workshop.Tests.Store;

/// <summary>Snapshots are swapped whole.</summary>
public sealed class SnapshotTests
{
    private const int Later = 6;

    [Fact]
    public async Task NotesLearnedNumbersAndSearch_OfEverySnapshotAgree()
    {
        await using var bench = DemoBench.OpenSmall(classes: ["electronic-keyboard"]);
        var ids = Enumerable.Range(0, 12).Select(n => bench.Live.Steps.TakeIn(new() { Machine = "Pellwick S-40", Complaint = $"no sound, zzunit{n}" }).Job!.Id).ToList();
        using var done = new CancellationTokenSource();
        var readers = Enumerable.Range(0, 3).Select(_ => Task.Run(() => AlwaysAgree(bench.Live, ids, done.Token), TestContext.Current.CancellationToken)).ToList();

        foreach (var id in ids)
        {
            var closed = bench.Live.Steps.Close(id, new() { Outcome = JobOutcome.Mended, Causes = [new("mask-rom-bad", Grade.Measured)] });
            Assert.Null(closed.Refused);
        }
        await done.CancelAsync();

        Assert.All(await Task.WhenAll(readers), looked => Assert.True(looked > 0));
    }

    [Fact]
    public async Task OldSnapshot_GoesOnSayingWhatItSaid()
    {
        await using var bench = DemoBench.OpenSmall(classes: ["electronic-keyboard"]);
        var old = bench.Live.Current;
        var shares = old.Learned.Share("mask-rom-bad", ["pellwick-s40"]);
        for (var n = 0; n < Later; n++)
        {
            var id = bench.Live.Steps.TakeIn(new() { Machine = "Pellwick S-40", Complaint = $"zzlater {n}" }).Job!.Id;
            bench.Live.Steps.Close(id, new() { Outcome = JobOutcome.Mended, Causes = [new("mask-rom-bad", Grade.Measured)] });
        }

        Assert.Equal(0, old.Find(new("zzlater")).Total);
        Assert.Equal(Later, bench.Live.Current.Find(new("zzlater")).Total);
        Assert.Equal(shares, old.Learned.Share("mask-rom-bad", ["pellwick-s40"]));
        Assert.True(bench.Live.Current.Learned.Share("mask-rom-bad", ["pellwick-s40"]).Mean > shares.Mean);
    }

    private static int AlwaysAgree(LiveBench live, List<string> ids, CancellationToken done)
    {
        var looked = 0;
        for (; !done.IsCancellationRequested || looked == 0; looked++)
        {
            var bench = live.Current;
            var mended = bench.Find(new("") { Outcomes = ["mended"], Take = 10_000 }).Hits.Select(h => h.Id).ToHashSet();
            foreach (var id in ids)
            {
                var closed = !bench.Notes.Find<Job>(id)!.IsOpen;
                Assert.Equal(closed, bench.Counted.Records.ContainsKey(id));
                Assert.Equal(closed, mended.Contains(id));
            }

            Assert.Equal(bench.Counted.Records.Values.Sum(r => r.Weight), bench.Learned.JobsCounted, 1e-6);
        }

        return looked;
    }
}
