using Triage.Notes.Kinds;
using Xunit;

namespace Triage.Workshop.Tests.Store;

/// <summary>People edit notes in any editor, while the bench is open.</summary>
public sealed class WatchedFolderTests
{
    private const string Closed = "jobs/2024/2024-002.md";

    [Fact]
    public async Task EditInPlace_EndsAsAFreshOpen()
    {
        await using var bench = Open();
        Edit(bench, Closed, text => text + "\nzzplace\n");

        await Eventually.Is(bench.Live, b => Finds(b, "zzplace", "2024-002"));
        await SameAsFresh(bench);
    }

    [Fact]
    public async Task EditByRename_AsEditorsSave_EndsAsAFreshOpen()
    {
        await using var bench = Open();
        var file = InDemo(bench, Closed);
        File.WriteAllText(file + "~", File.ReadAllText(file).Replace("capstan-belt-melted", "capstan-belt-slack", StringComparison.Ordinal));
        File.Move(file + "~", file, overwrite: true);

        await Eventually.Is(bench.Live, b => b.Notes.Find<Job>("2024-002")!.Causes[0].Fault == "capstan-belt-slack");
        await SameAsFresh(bench);
    }

    [Fact]
    public async Task NewAndDeletedFiles_EndAsAFreshOpen()
    {
        await using var bench = Open();
        Put(bench, "jobs/1999/1999-007.md", GeneratedJob("1999-007"));
        File.Delete(InDemo(bench, Closed));

        await Eventually.Is(bench.Live, b => b.Notes.Find<Job>("1999-007") is not null && b.Notes.Find<Job>("2024-002") is null);
        await SameAsFresh(bench);
    }

    [Fact]
    public async Task FaultNoteChanged_EndsAsAFreshOpen()
    {
        await using var bench = Open();
        var file = Directory.EnumerateFiles(InDemo(bench, "faults"), "*.md", SearchOption.AllDirectories).Order().First();
        var id = Path.GetFileNameWithoutExtension(file);
        File.WriteAllText(file, File.ReadAllText(file).Replace("\nname: ", "\nname: zzfault ", StringComparison.Ordinal));

        await Eventually.Is(bench.Live, b => b.Notes.Find<Fault>(id)!.Name.StartsWith("zzfault", StringComparison.Ordinal));
        await SameAsFresh(bench);
    }

    [Fact]
    public async Task FindingRenamed_IsFoundInTheJobsThatShowIt()
    {
        await using var bench = Open();
        var file = Directory.EnumerateFiles(Path.Combine(bench.Folder, "common"), "capstan.md", SearchOption.AllDirectories).Single();
        File.WriteAllText(file, File.ReadAllText(file).Replace("\nname: ", "\nname: zzspindle ", StringComparison.Ordinal));

        await Eventually.Is(bench.Live, b => b.Notes.Find<Finding>("capstan")!.Name.StartsWith("zzspindle", StringComparison.Ordinal));
        await SameAsFresh(bench);
    }

    [Fact]
    public async Task FolderMovedAndFolderRemoved_EndAsAFreshOpen()
    {
        await using var bench = Open();
        Directory.Move(InDemo(bench, "jobs/2024"), InDemo(bench, "jobs/2024.old"));
        Directory.Delete(InDemo(bench, "jobs/2023"), recursive: true);

        await Eventually.Is(bench.Live, b => b.Notes.Find<Job>("2024-002")?.Place.Path == "jobs/2024.old/2024-002.md" && b.Notes.Find<Job>("2023-004") is null);
        await SameAsFresh(bench);
    }

    [Fact]
    public async Task BurstOfFiles_EndsAsAFreshOpen()
    {
        await using var bench = Open();
        for (var n = 0; n < 2000; n++)
            Put(bench, $"jobs/burst-{n % 40}/1998-{n:0000}.md", GeneratedJob($"1998-{n:0000}"));

        await Eventually.Is(bench.Live, b => b.Notes.Jobs.Count(j => j.Id.StartsWith("1998-", StringComparison.Ordinal)) == 2000);
        await SameAsFresh(bench);
    }

    [Fact]
    public async Task FolderThatVanishes_KeepsAnswering_RefusesWrites_AndIsPickedUpAgain()
    {
        await using var bench = DemoBench.OpenSmall(watch: true, "cassette-deck", "electronic-keyboard");
        var demo = Path.Combine(bench.Folder, "demo");
        var open = bench.Live.Current.Notes.Jobs.First(j => j.IsOpen).Id;
        var notes = bench.Live.Current.Notes.All.Count();
        Directory.Move(demo, demo + "-away");

        var refused = bench.Live.Steps.Line(open, "anybody there?").Refused;
        bench.Live.Rescan();
        await Task.Delay(1500, TestContext.Current.CancellationToken);

        Assert.Equal(RefusalKind.CannotWrite, refused!.Kind);
        Assert.Equal($"The book's folder {demo} is no longer there.", refused.What);
        Assert.Equal(notes, bench.Live.Current.Notes.All.Count());
        Assert.NotNull(bench.Live.Steps.Ask("Pellwick S-40", "no sound").Answer);

        File.AppendAllText(Path.Combine(demo + "-away", Closed), "\nzzreturned\n");
        Directory.Move(demo + "-away", demo);
        await Eventually.Is(bench.Live, b => Finds(b, "zzreturned", "2024-002"));
        Edit(bench, Closed, text => text + "\nzzagain\n");
        await Eventually.Is(bench.Live, b => Finds(b, "zzagain", "2024-002"));
        Assert.Null(bench.Live.Steps.Line(open, "back again").Refused);
        await SameAsFresh(bench);
    }

    [Fact]
    public async Task SettingsChanged_CountFromTheNextSnapshotOn()
    {
        await using var bench = Open();
        Put(bench, "bench.yaml", "value-of-hour: 31\n");

        await Eventually.Is(bench.Live, b => b.Settings.ValueOfHour == 31);
    }

    internal static string GeneratedJob(string id) =>
        $"""
        ---
        format: 1
        kind: job
        id: {id}
        name: generated {id}
        device: ferrelby-c77
        opened: 1998-01-05T09:00:00+01:00
        complaint: the belt slips
        log:
          - at: 1998-01-05T09:10:00+01:00
            saw: capstan
            value: still
        causes:
          - fault: capstan-belt-melted
            grade: measured
        outcome: mended
        closed: 1998-02-05T09:00:00+01:00
        generated: true
        ---
        """;

    private static DemoBench Open() => DemoBench.OpenSmall(watch: true, "cassette-deck");

    private static async Task SameAsFresh(DemoBench bench)
    {
        // fitting an epoch anew follows in the background
        await Eventually.Is(bench.Live, b => !b.Counted.RefitDue);
        await using var fresh = LiveBench.Open(new() { Books = bench.Books, Clock = bench.Clock, Watch = false });
        BenchComparison.Same(fresh.Current, bench.Live.Current);
    }

    private static bool Finds(Bench bench, string words, string id) => bench.Find(new(words)).Hits.Any(h => h.Id == id);

    private static string InDemo(DemoBench bench, string path) => Path.Combine(bench.Folder, "demo", path);

    private static void Edit(DemoBench bench, string path, Func<string, string> edit) =>
        File.WriteAllText(InDemo(bench, path), edit(File.ReadAllText(InDemo(bench, path))));

    private static void Put(DemoBench bench, string path, string text)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(InDemo(bench, path))!);
        File.WriteAllText(InDemo(bench, path), text);
    }
}
