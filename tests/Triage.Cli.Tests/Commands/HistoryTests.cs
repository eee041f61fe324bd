namespace Triage.Cli.Tests.Commands;

/// <summary>What steps replaced, from the command line.</summary>
public sealed class HistoryTests : IDisposable
{
    private readonly TestBench bench = TestBench.Small();

    public void Dispose() => bench.Dispose();

    [Fact]
    public async Task A_version_is_listed_shown_and_brought_back()
    {
        var before = await Text();
        await Done("line", "2026-001", "C3 short");

        var version = (await bench.Json("history", "2026")).All("versions").Single().Text("version");
        Assert.Contains(" came", (await Done("history", "2026")).Output, StringComparison.Ordinal);
        Assert.Equal(before.TrimEnd('\n'), (await Done("history", "2026", "--show", version[..8])).Output.TrimEnd('\n'));
        await Done("history", "2026", "--back", version[..8]);

        Assert.Equal(before, await Text());
        Assert.Equal(2, (await bench.Json("history", "2026-001")).All("versions").Length);
    }

    [Fact]
    public async Task A_job_that_changed_since_is_not_replaced()
    {
        await Done("line", "2026-001", "C3 short");
        var past = await bench.Json("history", "2026-001");
        await Done("line", "2026-001", "C3 out");

        var said = await bench.Run("history", "2026-001", "--back", past.All("versions").Single().Text("version"), "--since", past.Text("now"));

        Assert.Equal(4, said.Code);
        Assert.Contains("changed by somebody else", said.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_was_erased_is_gone_and_a_version_that_never_was_is_refused()
    {
        await Done("line", "2026-001", "zzprivate");
        await Done("undo", "2026-001", "1");
        await Done("history", "2026-001", "--erase");

        Assert.Empty((await bench.Json("history", "2026-001")).All("versions"));
        Assert.DoesNotContain(Directory.EnumerateFiles(bench.Folder("small"), "*", SearchOption.AllDirectories), f => File.ReadAllText(f).Contains("zzprivate", StringComparison.Ordinal));
        var said = await bench.Run("history", "2026-001", "--show", "abcd1234");
        Assert.Equal((3, "No version “abcd1234” of 2026-001 is kept. Look at the list: triage history 2026-001."), (said.Code, said.Error));
    }

    [Fact]
    public async Task A_job_whose_file_is_gone_comes_back_by_its_id()
    {
        var before = await Text();
        await Done("line", "2026-001", "C3 short");
        var version = (await bench.Json("history", "2026-001")).All("versions").Single().Text("version");
        File.Delete(bench.File("small", "2026-001.md"));

        await Done("history", "2026-001", "--back", version);

        Assert.Equal(before, await Text());
    }

    private Task<string> Text() => File.ReadAllTextAsync(bench.File("small", "2026-001.md"), TestContext.Current.CancellationToken);

    private async Task<Said> Done(params string[] args)
    {
        var said = await bench.Run(args);
        Assert.True(said.Code == 0, said.Errors);
        return said;
    }
}
