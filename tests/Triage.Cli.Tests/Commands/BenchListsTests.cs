using Snapshooter.Xunit3;

namespace Triage.Cli.Tests.Commands;

/// <summary>What the bench has, from the command line: drawer, instruments, settings, drawings, a note written anew.</summary>
public sealed class BenchListsTests : IDisposable
{
    private readonly TestBench bench = TestBench.Small();

    public void Dispose() => bench.Dispose();

    [Fact]
    public async Task Parts_are_put_in_and_listed_by_kind()
    {
        await bench.Json("drawer", "put", "backup-cap", "2", "--rating", "0.1 F 5.5 V", "--where", "tin 3", "--tested");
        await bench.Json("drawer", "put", "backup-cap", "1", "--rating", "0.22 F 5.5 V");

        Snapshot.Match((await bench.Run("drawer")).Lines);
    }

    [Fact]
    public async Task One_is_taken_for_a_job_by_a_few_words_of_it()
    {
        await bench.Json("drawer", "put", "backup-cap", "2", "--rating", "0.1 F 5.5 V", "--where", "tin 3", "--tested");
        await bench.Json("drawer", "put", "backup-cap", "1", "--rating", "0.22 F 5.5 V");

        var unclear = await bench.Run("drawer", "take", "2026-001", "backup-cap");
        var log = (await bench.Json("drawer", "take", "2026-001", "tin 3")).GetProperty("job").All("log");

        Assert.Equal(3, unclear.Code);
        Assert.Contains("0.22 F 5.5 V, place not noted", unclear.Error, StringComparison.Ordinal);
        Assert.Equal(("part", "tested-good", "the drawer, tin 3"), (log[^1].Text("type"), log[^1].Text("state"), log[^1].Text("from")));
        Assert.Equal([1, 1], (await bench.Json("drawer")).All("items").Select(i => i.Number("count")));
        Assert.Contains("It lies in the drawer again: 2 there now.", (await bench.Run("undo", "2026-001", $"{log.Length - 1}")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Counts_change_by_what_is_said_and_never_below_nothing()
    {
        await bench.Json("drawer", "put", "backup-cap", "2");
        var items = (await bench.Json("drawer", "count", "backup-cap", "--more", "3", "--fewer", "1", "--tested", "yes")).All("items");
        var tooFew = await bench.Run("drawer", "count", "backup-cap", "--fewer", "9");
        var unknown = await bench.Run("drawer", "remove", "fuse");
        var misused = await bench.Run("drawer", "put", "backup-cap", "many");

        Assert.Equal((4, true), (items[0].Number("count"), items[0].GetProperty("tested").GetBoolean()));
        Assert.Contains("holds 4 of this backup-cap, fewer than 9", tooFew.Error, StringComparison.Ordinal);
        Assert.Equal((3, "Nothing in the drawer goes by “fuse”. Look at the list: triage drawer."), (unknown.Code, unknown.Error));
        Assert.Equal((2, "See triage drawer put --help."), (misused.Code, misused.Error));
        Assert.Empty((await bench.Json("drawer", "remove", "backup-cap")).All("items"));
    }

    [Fact]
    public async Task The_check_reads_the_bench_s_own_file_too()
    {
        await File.WriteAllTextAsync(bench.File("small", "bench.yaml"), "drawer:\n  - {part: backup-cup, count: 1}\n", TestContext.Current.CancellationToken);
        var said = await bench.Run("check");
        Assert.EndsWith("bench.yaml:2:12: warning: There is no part class `backup-cup`. Did you mean backup-cap?", said.Lines[0], StringComparison.Ordinal);
        Assert.Equal(0, said.Code);
    }

    [Fact]
    public async Task What_a_job_needs_is_looked_for_in_the_drawer()
    {
        await bench.Json("drawer", "put", "backup-cap", "2", "--rating", "0.1 F 5.5 V", "--where", "tin 3");
        Snapshot.Match((await bench.Run("drawer", "--for", "2026-001")).Lines);
    }

    [Fact]
    public async Task An_instrument_is_set_up_changed_in_one_respect_and_taken_away()
    {
        await bench.Json("instruments", "bench meter", "--kind", "multimeter", "--input", "10 M", "--range", "dc-volts 20 V, step 10 mV, 0.5 % + 2", "--cannot", "esr");
        await bench.Json("instruments", "bench meter", "--burden", "200 mV");
        var wrong = await bench.Run("instruments", "bench meter", "--range", "dc-volts a lot");
        var unknown = await bench.Run("instruments", "other meter");

        Assert.Equal(3, wrong.Code);
        Assert.Contains("is no range", wrong.Error, StringComparison.Ordinal);
        Assert.Contains("No instrument “other meter” is set up.", unknown.Error, StringComparison.Ordinal);
        Snapshot.Match((await bench.Run("instruments")).Lines);
        Assert.Empty((await bench.Json("instruments", "bench meter", "--remove")).All("instruments"));
    }

    [Fact]
    public async Task Settings_are_shown_and_one_is_changed_alone()
    {
        await bench.Json("settings", "--value-of-hour", "15,5", "--tool", "multimeter", "lens");
        await bench.Json("settings", "--without-tool", "lens");
        var negative = await bench.Run("settings", "--cost-of-day", "-2");
        var unknown = await bench.Run("settings", "--without-tool", "lathe");

        Assert.Equal((3, "The cost of a waiting day is -2, less than nothing. Write 0 or more."), (negative.Code, negative.Error));
        Assert.Contains("Listed are multimeter", unknown.Error, StringComparison.Ordinal);
        Snapshot.Match((await bench.Run("settings")).Lines);
    }

    [Fact]
    public async Task A_drawing_is_copied_into_the_book_and_named_in_the_device_s_note()
    {
        var file = bench.File("small", "../sheet.pdf");
        await File.WriteAllTextAsync(file, "%PDF-1.4\n", TestContext.Current.CancellationToken);

        var drawing = Assert.Single((await bench.Json("drawings", "Aldine C-1", "--add", file, "--board", "A", "--shows", "whole circuit: C3")).All("drawings"));
        File.Delete(file);

        Assert.Equal(("A", "whole circuit: C3"), (drawing.Text("board"), drawing.Text("shows")));
        Assert.Equal("%PDF-1.4\n", await File.ReadAllTextAsync(drawing.Text("file"), TestContext.Current.CancellationToken));
        Assert.Contains("whole circuit: C3", (await bench.Run("drawings", "Aldine C-1", "--board", "A")).Output, StringComparison.Ordinal);
        Assert.Equal(5, (await bench.Run("drawings", "Aldine C-1", "--add", file)).Code);
        Assert.Empty((await bench.Json("check")).All("problems"));
    }

    [Fact]
    public async Task A_note_is_written_anew_only_on_the_version_it_was_made_from()
    {
        var read = await bench.Json("note", "chime");
        var (text, version, file) = (read.Text("text"), read.Text("version"), bench.File("small", "../chime.txt"));
        await File.WriteAllTextAsync(file, text + "\nHeard best in the evening.\n", TestContext.Current.CancellationToken);

        var unsaid = await bench.Run("note", "chime", "--save", file);
        Assert.True((await bench.Json("note", "chime", "--save", file, "--since", version)).GetProperty("written").GetBoolean());
        var stale = await bench.Run("note", "chime", "--save", file, "--since", version);
        await File.WriteAllTextAsync(file, text.Replace("kind: finding", "kind: fnding", StringComparison.Ordinal), TestContext.Current.CancellationToken);
        var broken = await bench.Run("note", "chime", "--save", file, "--since", (await bench.Json("note", "chime")).Text("version"));

        Assert.Equal((3, 4, 1), (unsaid.Code, stale.Code, broken.Code));
        Assert.Contains("Nothing was written", broken.Output, StringComparison.Ordinal);
        Assert.Contains("in the evening", (await bench.Run("note", "chime")).Output, StringComparison.Ordinal);
    }
}
