using System.Diagnostics;

namespace Triage.Cli.Tests.Commands;

/// <summary>The one command that does all the set-up.</summary>
public sealed class StartScriptTests
{
    [Fact]
    public async Task Starts_answers_and_stops_on_a_working_copy_of_the_demo_book()
    {
        using var folder = new TemporaryFolder();
        var start = new ProcessStartInfo(Path.Combine(Repository.Root, "tools", "start"), ["--check"]) { RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["TRIAGE_BENCH"] = Path.Combine(folder.Path, "bench");

        using var script = Process.Start(start)!;
        var errors = script.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        var output = await script.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await script.WaitForExitAsync(TestContext.Current.CancellationToken);

        Assert.True(script.ExitCode == 0, await errors);
        Assert.Contains("Corvane K-61", output, StringComparison.Ordinal);
        Assert.Contains("http://127.0.0.1:", output, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(folder.Path, "bench", "README.md")));
    }

    private sealed class TemporaryFolder : IDisposable
    {
        public string Path { get; } = Directory.CreateTempSubdirectory("triage-start-").FullName;

        public void Dispose() => Directory.Delete(Path, recursive: true);
    }
}
