using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Search.Queries;
using Xunit;

namespace Triage.Workshop.Tests.Store;

/// <summary>Whether a bench that moved along with its folder says what one opened afresh says.</summary>
internal static class BenchComparison
{
    private static readonly string[] Questions = ["display", "no sound", "belt", "capacitor C14", "generated", "zzfault", "zzspindle", ""];

    public static void Same(Bench fresh, Bench moved)
    {
        Assert.Equal(Ids(fresh), Ids(moved));
        Assert.Equal(fresh.Problems.Select(p => p.ToString()).Order(), moved.Problems.Select(p => p.ToString()).Order());
        foreach (var question in Questions)
            Assert.Equal(Hits(fresh, question), Hits(moved, question));
        SameLearned(fresh, moved);
    }

    public static void SameLearned(Bench fresh, Bench moved)
    {
        Assert.Equal(fresh.Counted.Records.Keys.Order(), moved.Counted.Records.Keys.Order());
        Assert.Equal(fresh.Learned.Epoch.FittedTo, moved.Learned.Epoch.FittedTo);
        Close(Numbers(fresh), Numbers(moved));
    }

    private static IEnumerable<string> Ids(Bench bench) => bench.Notes.All.Select(n => $"{n.Id} {n.Place.Book}/{n.Place.Path}").Order();

    private static IEnumerable<string> Hits(Bench bench, string question) =>
        bench.Find(new(question) { Take = 10_000 }).Hits.Select(h => $"{h.Kind} {h.Id}").Order();

    private static IEnumerable<(string What, double Value)> Numbers(Bench bench)
    {
        ImmutableArray<string> faults = [.. bench.Notes.Of<Fault>().Select(f => f.Id)];
        yield return ("jobs", bench.Learned.JobsCounted);
        yield return ("independent", bench.Learned.IndependentFaults);
        foreach (var device in bench.Notes.Of<Device>())
        {
            ImmutableArray<string> levels = [device.Id, device.Class];
            foreach (var fault in faults)
                yield return ($"share {fault} on {device.Id}", bench.Learned.Share(fault, levels).Mean);
            yield return ($"unlisted on {device.Id}", bench.Learned.UnlistedShare(levels).Mean);
            foreach (var fault in bench.Notes.Of<Fault>())
            {
                foreach (var shown in fault.Shows)
                {
                    var link = bench.Learned.Link(fault.Id, shown.Finding, levels);
                    for (var v = 0; v < (link?.Mean.Length ?? 0); v++)
                        yield return ($"{fault.Id} → {shown.Finding}[{v}] on {device.Id}", link!.Mean[v]);
                }
            }
        }
    }

    private static void Close(IEnumerable<(string What, double Value)> fresh, IEnumerable<(string What, double Value)> moved)
    {
        foreach (var (a, b) in fresh.Zip(moved))
        {
            Assert.Equal(a.What, b.What);
            Assert.True(Math.Abs(a.Value - b.Value) <= 1e-12, $"{a.What}: {a.Value:R} afresh, {b.Value:R} moved along");
        }
    }
}
