namespace Triage.Cli.Tests.Commands;

/// <summary>Each step of a job is written as one entry and can be taken back.</summary>
public sealed class StepTests : IDisposable
{
    private readonly TestBench bench = TestBench.Small();

    public void Dispose() => bench.Dispose();

    [Theory]
    [InlineData("read", "read", "C3 + to -: 12 R", "--value", "12 R", "--from", "C3 +", "--to", "C3 -", "--mode", "ohms", "--power", "off, drained", "--instrument", "bench meter")]
    [InlineData("swapped", "swapped", "C3", "works", "--fix", "replace-backup-cap", "--old-back", "returned")]
    [InlineData("opened", "opened", "lid")]
    [InlineData("taken-off", "taken-off", "four screws", "--where", "tray 2")]
    [InlineData("powered", "powered", "limited", "--current", "120 mA")]
    [InlineData("line", "line", "C14 short, 47/16, plays")]
    [InlineData("tested", "tested", "ohms-in-place", "climbs")]
    public async Task Is_recorded_and_can_be_taken_back(string type, string command, params string[] rest)
    {
        var before = await File.ReadAllBytesAsync(bench.File("small", "2026-001.md"), TestContext.Current.CancellationToken);

        var page = await bench.Json([command, "2026-001", .. rest]);

        var log = page.GetProperty("job").All("log");
        Assert.Equal((2, type), (log.Length, log[^1].Text("type")));
        await bench.Json("undo", "2026-001", "1");
        Assert.Equal(before, await File.ReadAllBytesAsync(bench.File("small", "2026-001.md"), TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task An_entry_that_was_kept_on_taking_it_back_is_put_back_where_it_stood()
    {
        await bench.Json("line", "2026-001", "lid off");
        var before = await File.ReadAllTextAsync(bench.File("small", "2026-001.md"), TestContext.Current.CancellationToken);
        var kept = bench.File("small", "kept.txt");

        await bench.Json("undo", "2026-001", "0", "--keep", kept);
        await bench.Json("put-back", "2026-001", "0", kept);

        var log = (await bench.Json("job", "2026-001")).GetProperty("job").All("log");
        Assert.Equal(2, log.Length);
        Assert.Equal("line", log[1].Text("type"));
        Assert.Contains("lid off", before, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_off_the_machine_is_said_and_what_a_shut_lid_leaves_over()
    {
        await bench.Json("opened", "2026-001", "lid");
        await bench.Json("taken-off", "2026-001", "four screws", "--where", "tray 2", "--note", "one is longer");
        var open = await bench.Run("job", "2026-001");
        await bench.Json("opened", "2026-001", "lid", "--shut");
        var shut = await bench.Run("job", "2026-001");

        Assert.Contains(open.Lines, l => l.EndsWith("off four screws, lies in tray 2", StringComparison.Ordinal));
        Assert.Contains(shut.Lines, l => l.EndsWith("four screws, lies in tray 2: left over, what was open is shut", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_photo_is_copied_into_the_book_with_a_line_of_its_own()
    {
        var photo = bench.File("small", "../reel.png");
        await File.WriteAllBytesAsync(photo, Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg=="), TestContext.Current.CancellationToken);

        await bench.Json("photo", "2026-001", photo, "--line", "left reel");
        File.Delete(photo);
        var gone = await bench.Run("photo", "2026-001", photo);

        Assert.Single(Directory.EnumerateFiles(bench.Folder("small"), "*.png", SearchOption.AllDirectories));
        Assert.Equal(5, gone.Code);
        Assert.Contains("reel.png cannot be read", gone.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_no_note_lists_is_listed_from_the_job()
    {
        await bench.Json("new-finding", "2026-001", "left reel squeals", "--says", "squeaks on the left");
        await bench.Json("new-test", "2026-001", "turn the left reel by hand", "left-reel-squeals", "--minutes", "1");
        var twice = await bench.Run("new-finding", "2026-001", "Left reel squeals");
        var log = (await bench.Json("saw", "2026-001", "left-reel-squeals", "yes")).GetProperty("job").All("log");

        Assert.Equal("left-reel-squeals", log[^1].Text("finding"));
        Assert.Contains("listed already", twice.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Consent_said_in_parts_adds_up()
    {
        await bench.Json("agree", "2026-001", "--spend", "12,5");
        var agreed = (await bench.Json("agree", "2026-001", "--may-erase", "yes")).GetProperty("job").GetProperty("consent");

        Assert.Equal((12.5, true), (agreed.Number("spendingLimit"), agreed.GetProperty("mayErase").GetBoolean()));
    }

    [Fact]
    public async Task A_closed_job_can_still_be_followed_up_and_its_lesson_is_kept()
    {
        await bench.Json("close", "2026-001", "--outcome", "mended", "--cause", "backup-cap-shorted:swapped", "--minutes", "35", "--lesson", "Look at C3 first.");

        await bench.Json("follow-up", "2026-001", "came-back", "--note", "silent again");

        var job = (await bench.Json("job", "2026-001")).GetProperty("job");
        Assert.True(job.All("followUps").Single().GetProperty("cameBack").GetBoolean());
        Assert.Contains("Look at C3 first.", job.Text("body"), StringComparison.Ordinal);
    }
}
