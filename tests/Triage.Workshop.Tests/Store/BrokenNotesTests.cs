using Triage.Notes.Kinds;
using Xunit;

namespace Triage.Workshop.Tests.Store;

/// <summary>Notes broken by hand while the bench is open: named, searchable, not learned from, back when mended.</summary>
public sealed class BrokenNotesTests
{
    private const string Path2024 = "jobs/2024/2024-002.md";

    [Fact]
    public async Task ConflictMarkers_TakeAJobOut_UntilTheyAreMended()
    {
        await using var bench = DemoBench.OpenSmall(classes: ["cassette-deck"]);
        var whole = Read(bench, Path2024);
        Write(bench, Path2024, whole.Replace("minutes: 110\n", "<<<<<<< ours\nminutes: 110\n=======\nminutes: 120\n>>>>>>> theirs\n", StringComparison.Ordinal));

        var broken = bench.Live.Current;
        Assert.Null(broken.Notes.Find<Job>("2024-002"));
        Assert.DoesNotContain("2024-002", broken.Counted.Records.Keys);
        Assert.Contains(broken.Problems, p => p.ToString().StartsWith($"{Path2024}:36:1: A git conflict marker", StringComparison.Ordinal));
        Assert.Contains(broken.Find(new("Haverkate")).Hits, h => h.Kind == "unreadable" && h.Title == Path2024);
        Assert.StartsWith($"{Path2024} cannot be changed by the program: A git conflict marker", bench.Live.Steps.FollowUp("2024-002", cameBack: false).Refused!.What, StringComparison.Ordinal);

        Write(bench, Path2024, whole);
        Assert.NotNull(bench.Live.Current.Notes.Find<Job>("2024-002"));
        await SameAsFresh(bench);
    }

    [Fact]
    public async Task TwoJobsOfOneId_TeachNothing_UntilOneIsGone()
    {
        await using var bench = DemoBench.OpenSmall(classes: ["cassette-deck"]);
        Write(bench, "jobs/2024/copy.md", Read(bench, Path2024));

        var twins = bench.Live.Current;
        Assert.Null(twins.Notes.Find<Job>("2024-002"));
        Assert.DoesNotContain("2024-002", twins.Counted.Records.Keys);
        Assert.Equal(["demo/jobs/2024/2024-002.md", "demo/jobs/2024/copy.md"], twins.Find(new("magnet chafed") { Kinds = ["job"] }).Hits.Select(h => h.Id).Where(id => id.StartsWith("demo/", StringComparison.Ordinal)).Order());
        Assert.Equal(2, twins.Problems.Count(p => p.What.StartsWith("Two notes have the id `2024-002`", StringComparison.Ordinal)));
        Assert.Equal(RefusalKind.CannotWrite, bench.Live.Steps.FollowUp("2024-002", cameBack: false).Refused!.Kind);
        await SameAsFresh(bench);

        File.Delete(Path.Combine(bench.Folder, "demo", Path2024));
        bench.Live.OnDisk.Reread(bench.Live.OnDisk.Home!, [Path2024], patient: false);
        Assert.Equal("jobs/2024/copy.md", bench.Live.Current.Notes.Find<Job>("2024-002")!.Place.Path);
        await SameAsFresh(bench);
    }

    [Fact]
    public async Task TwoFaultsOfOneIdInTwoBooks_AreNotReasonedWith_UntilOneIsGone()
    {
        await using var bench = DemoBench.OpenSmall(classes: ["electronic-keyboard"]);
        Write(bench, "faults/twin.md", "---\nformat: 1\nkind: fault\nid: mask-rom-bad\nname: zztwin\n---\n");

        Assert.Null(bench.Live.Current.Notes.Find<Fault>("mask-rom-bad"));
        Assert.Contains(bench.Live.Current.Find(new("zztwin")).Hits, h => h.Id == "demo/faults/twin.md");
        await SameAsFresh(bench);

        File.Delete(Path.Combine(bench.Folder, "demo", "faults/twin.md"));
        bench.Live.Rescan();
        Assert.NotNull(bench.Live.Current.Notes.Find<Fault>("mask-rom-bad"));
        await SameAsFresh(bench);
    }

    [Fact]
    public async Task NewerFormat_CanBeFound_NotChanged()
    {
        using var book = new SmallBook();
        book.Write(SmallBook.JobPath, SmallBook.OpenJob.Replace("format: 1", "format: 9", StringComparison.Ordinal));
        await using var live = book.Open();

        var refused = live.Steps.Line(SmallBook.JobId, "hello").Refused;

        Assert.Equal($"{SmallBook.JobPath} cannot be changed by the program: Format 9: this note was made by a newer version. It can be searched, not changed or learned from.", refused!.What);
        Assert.Equal(1, live.Current.Find(new("crackles")).Total);
        Assert.Contains(live.Current.Problems, p => p.Line == 2 && p.What.StartsWith("Format 9", StringComparison.Ordinal));
    }

    [Fact]
    public async Task EntryBehindAnAlias_IsNotTakenBack_AndTheNoteStaysAsItIs()
    {
        using var book = new SmallBook();
        var odd = SmallBook.OpenJob.Replace("complaint: crackles\n", "complaint: crackles\nspare: &entries\n  - {at: 2026-01-05T09:10:00+01:00, line: hums}\nlog: *entries\n", StringComparison.Ordinal);
        book.Write(SmallBook.JobPath, odd);
        await using var live = book.Open();

        var refused = live.Steps.Undo(SmallBook.JobId, 0).Refused;

        Assert.Equal(RefusalKind.CannotWrite, refused!.Kind);
        Assert.StartsWith($"{SmallBook.JobPath} cannot be changed by the program: ", refused.What, StringComparison.Ordinal);
        Assert.Equal(odd, File.ReadAllText(book.At(SmallBook.JobPath)));
    }

    [Fact]
    public async Task CauseNamedTwice_CountsOnce()
    {
        await using var bench = DemoBench.OpenSmall(classes: ["cassette-deck"]);
        var once = bench.Live.Current.Learned.JobsCounted;
        Write(bench, Path2024, Read(bench, Path2024).Replace("causes:\n", "causes:\n  - {fault: capstan-belt-melted, grade: measured}\n", StringComparison.Ordinal));

        Assert.Single(bench.Live.Current.Counted.Records["2024-002"].Causes);
        Assert.Equal(once, bench.Live.Current.Learned.JobsCounted);
    }

    [Fact]
    public void TwoBooksOfOneName_AreRefused()
    {
        using var book = new SmallBook();

        var refused = Assert.Throws<ArgumentException>(() => LiveBench.Open(new() { Books = [new("a", book.Folder), new("a", book.Folder)], Watch = false }));

        Assert.StartsWith("Two books are called “a”", refused.Message, StringComparison.Ordinal);
    }

    private static string Read(DemoBench bench, string path) => File.ReadAllText(Path.Combine(bench.Folder, "demo", path));

    private static void Write(DemoBench bench, string path, string text)
    {
        File.WriteAllText(Path.Combine(bench.Folder, "demo", path), text);
        bench.Live.OnDisk.Reread(bench.Live.OnDisk.Home!, [path], patient: false);
    }

    private static async Task SameAsFresh(DemoBench bench)
    {
        await Eventually.Is(bench.Live, b => !b.Counted.RefitDue);
        await using var fresh = LiveBench.Open(new() { Books = bench.Books, Clock = bench.Clock, Watch = false });
        BenchComparison.Same(fresh.Current, bench.Live.Current);
    }
}
