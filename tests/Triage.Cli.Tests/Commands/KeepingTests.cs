namespace Triage.Cli.Tests.Commands;

/// <summary>Backing up, restoring and verifying from the command line.</summary>
public sealed class KeepingTests : IDisposable
{
    private readonly TestBench bench = TestBench.Small();

    public void Dispose() => bench.Dispose();

    private string Zip => bench.File("small", "../backup.zip");

    private string Into => bench.File("small", "../again");

    [Fact]
    public async Task A_backup_is_restored_beside_the_book()
    {
        await Done("line", "2026-001", "C3 short");
        Assert.Contains("14 files, ", (await Done("backup", Zip)).Output, StringComparison.Ordinal);
        await Done("restore", Zip, "--into", Into);

        Assert.Equal(await Text("2026-001.md"), await File.ReadAllTextAsync(Path.Combine(Into, "2026-001.md"), TestContext.Current.CancellationToken));
        Assert.Equal((3, $"{Zip} is there already, and is never overwritten. Nothing was written. Name a place that is not there yet."), ((await bench.Run("backup", Zip)).Code, (await bench.Run("backup", Zip)).Error));
        Assert.Equal(3, (await bench.Run("restore", Zip, "--into", Into)).Code);
    }

    [Fact]
    public async Task Restoring_needs_no_book_that_is_still_there()
    {
        await Done("backup", Zip);
        Directory.Delete(bench.Folder("small"), recursive: true);

        await Done("restore", Zip, "--into", bench.Folder("small"));

        Assert.Contains("0 errors", (await Done("check")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Damage_ends_with_one_and_an_edit_with_nought()
    {
        await Done("verify");
        await File.AppendAllTextAsync(bench.File("small", "chime.md"), "\nBy hand.\n", TestContext.Current.CancellationToken);
        Assert.Contains("chime.md: edited by hand, and reads well.", (await Done("verify")).Lines);

        File.Delete(bench.File("small", "chime.md"));
        var said = await bench.Run("verify");
        Assert.Equal(1, said.Code);
        Assert.Contains("chime.md: The file of note chime is gone. Take it from a backup. If it is meant, say so with triage verify --accept.", said.Lines);

        await Done("verify", "--accept");
        await Done("verify");
    }

    [Fact]
    public async Task The_check_names_a_photo_that_is_not_there()
    {
        await File.WriteAllTextAsync(bench.File("small", "2026-001.md"), (await Text("2026-001.md")).Replace("words: \"no chime at all\"}", "words: \"no chime at all\", photos: [photos/face.png]}", StringComparison.Ordinal), TestContext.Current.CancellationToken);

        Assert.Contains((await bench.Run("check")).Lines, l => l.Contains("2026-001.md:0:0: warning: The photo photos/face.png is not there.", StringComparison.Ordinal));
        Assert.Equal(1, (await bench.Run("verify")).Code);
    }

    private Task<string> Text(string path) => File.ReadAllTextAsync(bench.File("small", path), TestContext.Current.CancellationToken);

    private async Task<Said> Done(params string[] args)
    {
        var said = await bench.Run(args);
        Assert.True(said.Code == 0, said.Errors + said.Output);
        return said;
    }
}
