using Triage.Measurements.Parts;
using Triage.Notes.Kinds;
using Triage.Workshop.Stock;
using Xunit;

namespace Triage.Workshop.Tests.Stock;

/// <summary>Parts on hand: put in, taken for a job, never fewer than none.</summary>
public sealed class DrawerTests
{
    private const string Job = "2026-022";

    [Fact]
    public async Task One_taken_for_a_job_is_one_fewer_here_and_one_arrived_there_until_none_is_left()
    {
        await using var bench = Open("value-of-hour: 14 # ours\ndrawer:\n  - {part: backup-capacitor, rating: \"0.1 F 5.5 V\", count: 2, where: tin 3} # bought in May\n");
        var key = Assert.Single(Stock(bench)).Key;
        for (var left = 1; left >= 0; left--)
        {
            Assert.Null(bench.Live.Drawer.Take(Job, key).Refused);
            Assert.Equal(left, Assert.Single(Stock(bench)).Count);
        }

        var taken = bench.Live.Current.Notes.Find<Job>(Job)!.Log.OfType<PartMoved>().Last();
        Assert.Equal(("backup-capacitor", PartState.Arrived, 0d, "the drawer, tin 3"), (taken.Part, taken.State, taken.Price, taken.From));
        var log = bench.Live.Current.Notes.Find<Job>(Job)!.Log.Length;
        Assert.NotNull(bench.Live.Drawer.Take(Job, key).Refused);
        Assert.NotNull(bench.Live.Drawer.Move(key, -1));
        Assert.Equal((0, log), (Assert.Single(Stock(bench)).Count, bench.Live.Current.Notes.Find<Job>(Job)!.Log.Length));
        Assert.StartsWith("value-of-hour: 14 # ours\n", Text(bench), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_cannot_be_recorded_is_back_in_the_drawer()
    {
        await using var bench = Open("drawer:\n  - {part: belt, count: 1}\n");
        Assert.NotNull(bench.Live.Drawer.Take("2026-005", Stock(bench)[0].Key).Refused);
        Assert.Equal(1, Stock(bench)[0].Count);
    }

    [Fact]
    public async Task More_of_the_same_is_counted_to_it_and_an_unknown_kind_is_refused()
    {
        await using var bench = Open("currency: kr\n");
        var fuse = new StockItem("fuse", 3) { Rating = "T 1 A", Where = "tin 1" };
        Assert.Null(bench.Live.Drawer.Add(fuse));
        Assert.Null(bench.Live.Drawer.Add(fuse with { Count = 2 }));
        Assert.Null(bench.Live.Drawer.Add(fuse with { Tested = true }));
        Assert.Equal([5, 3], Stock(bench).Select(i => i.Count));
        Assert.Contains("Did you mean fuse?", bench.Live.Drawer.Add(new("fuze", 1))!.Instead, StringComparison.Ordinal);
        Assert.NotNull(bench.Live.Drawer.Add(fuse with { Count = 0 }));
        Assert.Null(bench.Live.Drawer.Remove(fuse.Key));
        Assert.True(Assert.Single(Stock(bench)).Tested);
    }

    [Theory]
    [InlineData("drawer:\n  - {part: belt, count: -1}\n", "`count` should be a whole number, 0 or more; it is -1.")]
    [InlineData("drawer:\n  - {part: belt, count: 1.5}\n", "`count` should be a whole number, 0 or more; it is 1.5.")]
    [InlineData("drawer:\n  - {count: 1}\n", "`part` is missing.")]
    [InlineData("drawer:\n  - {part: belt, count: 1, places: tin}\n", "`places` is not a field that is known here; it is kept.")]
    public async Task An_entry_with_something_wrong_is_named_with_its_line_and_then_nothing_is_changed(string settings, string problem)
    {
        await using var bench = Open(settings);
        Assert.Contains(bench.Live.Current.Problems, p => p.ToString().StartsWith("bench.yaml:2:", StringComparison.Ordinal) && p.What == problem);
        Assert.NotNull(bench.Live.Drawer.Add(new("belt", 1)));
        Assert.Equal(settings, Text(bench));
    }

    /// <summary>Fuses keep current and speed (IEC 60127-1); a capacitor's voltage may be higher, not lower (common practice, no source).</summary>
    [Theory]
    [InlineData("fuse", "T 1 A 250 V", "T 1 A 250 V", Fit.Same)]
    [InlineData("fuse", "T 1 A 250 V", "F 1 A 250 V", null)]
    [InlineData("fuse", "T 1 A 250 V", "T 2 A 250 V", null)]
    [InlineData("aluminium-electrolytic", "470 uF 16 V", "470 uF 25 V", Fit.Same)]
    [InlineData("aluminium-electrolytic", "470 uF 16 V", "470 uF 10 V", null)]
    [InlineData("aluminium-electrolytic", "470 uF 16 V", "100 uF 16 V", null)]
    public void Only_what_may_go_in_is_offered(string part, string fitted, string stock, Fit? offered)
    {
        var all = DrawerFit.Of([new(part, 1) { Rating = stock }, new(part, 0) { Rating = fitted }, new("belt", 1)], part, [new(null, part, null, null, fitted)]);
        Assert.Equal(offered, all.SingleOrDefault()?.Fit);
    }

    private static System.Collections.Immutable.ImmutableArray<StockItem> Stock(DemoBench bench) => bench.Live.Current.Settings.Drawer;

    private static string Text(DemoBench bench) => File.ReadAllText(Path.Combine(bench.Folder, "demo", "bench.yaml"));

    private static DemoBench Open(string settings) => DemoBench.Open(prepare: folder => File.WriteAllText(Path.Combine(folder, "demo", "bench.yaml"), settings));
}
