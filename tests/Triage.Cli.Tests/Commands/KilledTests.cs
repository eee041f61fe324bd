using System.Diagnostics;
using System.Globalization;

namespace Triage.Cli.Tests.Commands;

/// <summary>The command as a process of its own, killed without warning or interrupted while it writes: all of it is there, or nothing.</summary>
public sealed class KilledTests : IDisposable
{
    private const int Jobs = 400, Rows = 1500;

    private readonly TestBench bench = TestBench.Small();

    public void Dispose() => bench.Dispose();

    private string Shelf => bench.Folder("small") + ".taken";

    private string Theirs => bench.File("small", "../theirs");

    private string Out => bench.File("small", "../out");

    [Theory]
    [InlineData("KILL")]
    [InlineData("INT")]
    public async Task Take_leaves_no_half_book_and_can_be_done_again(string signal)
    {
        Write(Theirs);
        string[] take = ["take", Theirs, "--as", "bakers", "--trust", "known", "--write"];

        await Signalled(signal, () => Some(Path.Combine(Shelf, ".bakers.half")), take);

        Assert.False(Directory.Exists(Path.Combine(Shelf, "bakers")));
        Assert.Equal(signal == "KILL", Directory.Exists(Path.Combine(Shelf, ".bakers.half")));
        Assert.Equal("No book was taken", (await Ran("take")).Lines[0]);
        await Ran(take);
        Assert.Equal(Jobs, Directory.GetFiles(Path.Combine(Shelf, "bakers"), "*.md").Length);
        Assert.False(Directory.Exists(Path.Combine(Shelf, ".bakers.half")));
    }

    [Theory]
    [InlineData("KILL")]
    [InlineData("INT")]
    public async Task Share_leaves_no_half_copy_and_can_be_done_again(string signal)
    {
        Write(bench.File("small", "old"));
        var half = Path.Combine(Path.GetDirectoryName(Out)!, ".out.half");

        await Signalled(signal, () => Some(half), "share", "--out", Out);

        Assert.False(Directory.Exists(Out));
        Assert.Equal(signal == "KILL", Directory.Exists(half));
        await Ran("share", "--out", Out);
        Assert.Equal(Jobs, Directory.GetFiles(Path.Combine(Out, "old")).Length);
        Assert.False(Directory.Exists(half));
    }

    [Theory]
    [InlineData("KILL")]
    [InlineData("INT")]
    public async Task Import_shows_nothing_until_it_is_whole_and_goes_on(string signal)
    {
        var (table, map) = (bench.File("small", "../table.csv"), bench.File("small", "../map.json"));
        File.WriteAllText(table, "cause,hum\n" + string.Concat(Enumerable.Range(0, Rows).Select(i => string.Create(CultureInfo.InvariantCulture, $"cause {i % 7},{i % 3}\n"))));
        File.WriteAllText(map, """{ "id": { "prefix": "old-" }, "class": { "id": "radio-set", "name": "Radio set" }, "closed": { "fixed": "2001-02-03" }, "cause": "cause", "others": "finding" }""");
        string[] import = ["import", table, "--map", map, "--write"];

        await Signalled(signal, () => Directory.Exists(bench.Folder("small")) && Directory.EnumerateFiles(bench.Folder("small"), "old-*.md", new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = 0 }).Any(), import);

        Assert.Contains("0 errors", (await Ran("check")).Output, StringComparison.Ordinal);
        Assert.NotEqual(0, (await bench.Run("note", "old-00001")).Code);
        await Ran(import);
        Assert.Equal(0, (await bench.Run("note", $"old-{Rows:00000}")).Code);
    }

    private static bool Some(string folder) => Directory.Exists(folder) && Directory.EnumerateFiles(folder, "*.md", SearchOption.AllDirectories).Skip(20).Any();

    /// <summary>Starts the command and sends it a signal as soon as it has written something.</summary>
    private async Task Signalled(string signal, Func<bool> writing, params string[] args)
    {
        // Ctrl-C is heard even where the tests themselves run in the background, which hands on that it is ignored
        var start = new ProcessStartInfo("env", ["--default-signal=INT", "dotnet", Path.Combine(AppContext.BaseDirectory, "triage.dll"), .. args, "--book", $"small={bench.Folder("small")}"]) { RedirectStandardOutput = true, RedirectStandardError = true };
        using var command = Process.Start(start)!;
        var said = (command.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken), command.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken));
        while (!command.HasExited && !writing())
            await Task.Delay(1, TestContext.Current.CancellationToken);
        using var kill = Process.Start("kill", [$"-{signal}", command.Id.ToString(CultureInfo.InvariantCulture)]);
        await command.WaitForExitAsync(TestContext.Current.CancellationToken);

        Assert.True(command.ExitCode != 0, $"It was through before the signal came: {await said.Item1}");
        if (signal == "INT")
            Assert.DoesNotContain("   at ", await said.Item2, StringComparison.Ordinal);
    }

    private async Task<Said> Ran(params string[] args)
    {
        var said = await bench.Run(args);
        Assert.True(said.Code == 0, said.Errors);
        return said;
    }

    private static void Write(string folder)
    {
        Directory.CreateDirectory(folder);
        foreach (var n in Enumerable.Range(0, Jobs))
        {
            File.WriteAllText(Path.Combine(folder, $"k-{n}.md"),
                $"---\nformat: 1\nkind: job\nid: k-{n}\nname: Job {n}\ndevice: aldine-c1\nopened: 2023-01-01T10:00:00+00:00\noutcome: mended\nclosed: 2023-01-02T10:00:00+00:00\n---\n");
        }
    }
}
