using Triage.Measurements.Parts;
using Triage.Notes.Kinds;
using Triage.Workshop.Steps;
using Triage.Workshop.Stock;
using Xunit;

namespace Triage.Workshop.Tests.Stock;

/// <summary>Parts on hand: put in, taken for a job, never fewer than none.</summary>
public sealed class DrawerTests(DrawerTests.OneBench shared) : IClassFixture<DrawerTests.OneBench>
{
    private const string Job = "2026-022";

    [Fact]
    public void One_taken_for_a_job_is_one_fewer_here_and_one_arrived_there_until_none_is_left()
    {
        var bench = With("value-of-hour: 14 # ours\ndrawer:\n  - {part: backup-capacitor, rating: \"0.1 F 5.5 V\", count: 2, where: tin 3} # bought in May\n");
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

    /// <summary>Another program changed the file, and this one has not read it again yet.</summary>
    [Fact]
    public void A_count_changes_what_the_file_holds_now_and_not_what_was_read_before()
    {
        var bench = With("drawer:\n  - {part: fuse, rating: T 1 A, count: 4}\n");
        File.WriteAllText(Path.Combine(bench.Folder, "demo", "bench.yaml"), "drawer:\n  - {part: belt, count: 9}\n  - {part: fuse, rating: T 1 A, count: 2}\n");
        Assert.Null(bench.Live.Drawer.Move(new StockItem("fuse", 4) { Rating = "T 1 A" }.Key, -1));
        Assert.Equal("drawer:\n  - {part: belt, count: 9}\n  - {part: fuse, rating: T 1 A, count: 1}\n", Text(bench));
    }

    [Fact]
    public void What_cannot_be_recorded_is_back_in_the_drawer()
    {
        var bench = With("drawer:\n  - {part: belt, count: 1}\n");
        Assert.NotNull(bench.Live.Drawer.Take("2026-005", Stock(bench)[0].Key).Refused);
        Assert.Equal(1, Stock(bench)[0].Count);
    }

    [Fact]
    public void A_taking_taken_back_lies_in_the_drawer_again_and_put_back_is_taken_again()
    {
        var bench = With("drawer:\n  - {part: fuse, rating: T 1 A, count: 4, where: tin 1}\n  - {part: fuse, rating: T 2 A, count: 4, where: tin 1}\n");
        var log = bench.Live.Drawer.Take(Job, Stock(bench)[1].Key).Job!.Log;
        var undone = bench.Live.Steps.Undo(Job, log.Length - 1);
        Assert.Equal([4, 4], Stock(bench).Select(i => i.Count));
        Assert.Equal(["It lies in the drawer again: 4 there now."], undone.Remarks);

        var again = bench.Live.Steps.PutBack(Job, log.Length - 1, EntryText.Of(undone.TakenBack!));
        Assert.Equal([4, 3], Stock(bench).Select(i => i.Count));
        Assert.Equal(["It is taken out of the drawer again: 3 left there."], again.Remarks);
        Assert.Equal(log[^1], again.Job!.Log[^1] with { Photos = log[^1].Photos });
    }

    /// <summary>"The drawer" in somebody's own words took nothing off the list.</summary>
    [Fact]
    public void What_never_was_counted_is_not_counted_back()
    {
        var bench = With("drawer:\n  - {part: fuse, count: 4}\n");
        var said = bench.Live.Steps.PartMoved(Job, new(default, "fuse", PartState.Arrived) { Price = 0, From = "the drawer" }).Job!;
        Assert.Empty(bench.Live.Steps.Undo(Job, said.Log.Length - 1).Remarks);
        Assert.Equal(4, Stock(bench)[0].Count);
    }

    [Fact]
    public void A_taking_is_taken_back_though_the_drawer_lists_it_no_more_and_that_is_said()
    {
        var bench = With("drawer:\n  - {part: fuse, rating: T 1 A, count: 1}\n");
        var key = Stock(bench)[0].Key;
        var log = bench.Live.Drawer.Take(Job, key).Job!.Log;
        Assert.Null(bench.Live.Drawer.Remove(key));

        var undone = bench.Live.Steps.Undo(Job, log.Length - 1);
        Assert.Null(undone.Refused);
        Assert.Equal(log.Length - 1, undone.Job!.Log.Length);
        Assert.Equal(["The drawer does not list fuse T 1 A any more: put it in anew if it goes back there."], undone.Remarks);

        var again = bench.Live.Steps.PutBack(Job, log.Length - 1, EntryText.Of(undone.TakenBack!));
        Assert.Equal(log.Length, again.Job!.Log.Length);
        Assert.Equal(["The drawer lists no fuse T 1 A to take: count there what is left."], again.Remarks);
    }

    [Fact]
    public void More_of_the_same_is_counted_to_it_and_an_unknown_kind_is_refused()
    {
        var bench = With("currency: kr\n");
        var fuse = new StockItem("fuse", 3) { Rating = "T 1 A", Where = "tin 1" };
        Assert.Null(bench.Live.Drawer.Add(fuse));
        Assert.Null(bench.Live.Drawer.Add(fuse with { Count = 2 }));
        Assert.Null(bench.Live.Drawer.Add(fuse with { Tested = true }));
        Assert.Equal([5, 3], Stock(bench).Select(i => i.Count));
        Assert.Contains("Did you mean fuse?", bench.Live.Drawer.Add(new("fuze", 1))!.Instead, StringComparison.Ordinal);
        Assert.NotNull(bench.Live.Drawer.Add(fuse with { Count = 0 }));
        Assert.Contains("more than 1,000,000", bench.Live.Drawer.Add(fuse with { Count = int.MaxValue })!.What, StringComparison.Ordinal);
        Assert.Contains("holds 5 of this fuse, fewer than 6", bench.Live.Drawer.Move(fuse.Key, -6)!.What, StringComparison.Ordinal);
        Assert.Null(bench.Live.Drawer.Remove(fuse.Key));
        Assert.True(Assert.Single(Stock(bench)).Tested);
    }

    [Theory]
    [InlineData("drawer:\n  - {part: belt, count: -1}\n", "`count` should be a whole number, 0 or more; it is -1.")]
    [InlineData("drawer:\n  - {part: belt, count: 1.5}\n", "`count` should be a whole number, 0 or more; it is 1.5.")]
    [InlineData("drawer:\n  - {count: 1}\n", "`part` is missing.")]
    [InlineData("drawer:\n  - {part: belt, count: 1, places: tin}\n", "`places` is not a field that is known here; it is kept.")]
    public void An_entry_with_something_wrong_is_named_with_its_line_and_then_nothing_is_changed(string settings, string problem)
    {
        var bench = With(settings);
        Assert.Contains(bench.Live.Current.Problems, p => p.ToString().StartsWith("bench.yaml:2:", StringComparison.Ordinal) && p.What == problem);
        Assert.NotNull(bench.Live.Drawer.Add(new("belt", 1)));
        Assert.Equal(settings, Text(bench));
    }

    [Theory]
    [InlineData("part: fuze", "There is no part class `fuze`.", "Did you mean fuse?")]
    [InlineData("part: clock-face", "There is no part class `clock-face`.", "Write its note, or correct the id.")]
    public void A_kind_of_part_that_no_note_describes_is_named_with_its_place_and_stays_in_the_drawer(string part, string what, string instead)
    {
        var bench = With($"currency: kr\ndrawer:\n  - {{{part}, count: 2}}\n");
        var problem = Assert.Single(bench.Live.Current.Problems);
        Assert.Equal(("bench.yaml", 3, 12, what, instead), (problem.Path, problem.Line, problem.Column, problem.What, problem.Instead));
        Assert.Null(bench.Live.Drawer.Move(Stock(bench)[0].Key, 1));
        Assert.Null(bench.Live.Drawer.Remove(Stock(bench)[0].Key));
        Assert.Empty(bench.Live.Current.Problems);
    }

    /// <summary>No rule of replacement is known for these: whatever lies there is for the eye, an equal marking first.</summary>
    [Theory]
    [InlineData("diode", "1 A 400 V", "1 A 100 V")]
    [InlineData("bridge-rectifier", "2 A 200 V", "2 A 50 V")]
    [InlineData("bipolar-transistor", "NPN 80 V 1 A", "PNP 80 V 1 A")]
    [InlineData("field-effect-transistor", "N 60 V", "P 60 V")]
    [InlineData("linear-regulator", "5 V 1 A", "12 V 1 A")]
    [InlineData("switching-regulator", "5 V", "3.3 V")]
    [InlineData("switch", "2 poles", "1 pole")]
    [InlineData("belt", "70 mm flat", "72 mm square")]
    [InlineData("backlight-lamp", "12 V 80 mA", "6 V 80 mA")]
    [InlineData("tantalum", "10 uF 25 V", "10 uF 10 V")]
    public void What_has_no_rule_is_never_said_to_fit(string part, string fitted, string other)
    {
        var all = DrawerFit.Of([new(part, 1) { Rating = other, Tested = true }, new(part, 1) { Rating = fitted }], part, [new(null, part, null, null, fitted)]);
        Assert.Equal([fitted, other], all.Select(f => f.Item.Rating));
        Assert.All(all, f => Assert.Equal(Fit.Check, f.Fit));
        Assert.All(all, f => Assert.StartsWith("not compared, there is no rule for this kind of part: check by hand.", Assert.Single(f.ToCheck), StringComparison.Ordinal));
    }

    [Fact]
    public void Markings_that_say_nothing_of_a_rating_are_not_compared()
    {
        var fit = Assert.Single(DrawerFit.Of([new("aluminium-electrolytic", 1) { Rating = "blue, tall" }], "aluminium-electrolytic", [new(null, "aluminium-electrolytic", null, null, "blue, tall")]));
        Assert.Equal(Fit.Check, fit.Fit);
        Assert.Contains("nothing that can be compared", Assert.Single(fit.ToCheck), StringComparison.Ordinal);
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

    private DemoBench With(string settings)
    {
        File.WriteAllText(Path.Combine(shared.Bench.Folder, "demo", "bench.yaml"), settings);
        shared.Bench.Live.OnDisk.Reread(shared.Bench.Live.OnDisk.Home!, ["bench.yaml"], patient: false);
        return shared.Bench;
    }

    public sealed class OneBench : IAsyncDisposable
    {
        public DemoBench Bench { get; } = DemoBench.Open();

        public ValueTask DisposeAsync() => Bench.DisposeAsync();
    }
}
