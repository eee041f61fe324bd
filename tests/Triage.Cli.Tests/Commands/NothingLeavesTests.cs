using System.Diagnostics;
using System.Text.RegularExpressions;
using Xunit;

namespace Triage.Cli.Tests.Commands;

/// <summary>Watched by strace, commands that need the sentence model speak to nobody, and leave nothing in a home but their own cache.</summary>
public sealed partial class NothingLeavesTests
{
    private const string Complaint = "cassette deck squeals like a piglet after a tape";

    private static readonly string Common = Path.Combine(Repository.Root, "kb", "common");

    [Fact]
    [Trait("run", "thorough")]
    public Task Asking_connects_to_nothing_and_writes_nowhere_else() => Watched(["ask", Complaint, "--book", $"common={Common}:known"], async command =>
        Assert.Contains("assette deck", await command.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken)));

    [Fact]
    [Trait("run", "thorough")]
    public Task Serving_connects_to_nothing_and_writes_nowhere_else() => Watched(["serve", "--port", "0", "--book", $"common={Common}:known"], async command =>
    {
        var address = (await command.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken))!.Split(' ').Single(w => w.StartsWith("http://", StringComparison.Ordinal));
        using var browser = new HttpClient { BaseAddress = new(address) };
        await browser.GetStringAsync(address, TestContext.Current.CancellationToken);
        Assert.Contains("assette deck", await browser.GetStringAsync($"/ask?complaint={Uri.EscapeDataString(Complaint)}", TestContext.Current.CancellationToken));
        command.Kill(entireProcessTree: true);
    });

    /// <param name="use">Uses the started command until it has ended.</param>
    private static async Task Watched(string[] arguments, Func<Process, Task> use)
    {
        Assert.SkipUnless(File.Exists("/usr/bin/strace"), "strace is not here: tools/needs strace.");
        var home = Directory.CreateTempSubdirectory("home-").FullName;
        try
        {
            var (cache, run, trace) = (Directory.CreateDirectory(Path.Combine(home, "cache")).FullName, Directory.CreateDirectory(Path.Combine(home, "run")).FullName, Path.Combine(home, "trace"));
            var start = new ProcessStartInfo("strace", ["-f", "--seccomp-bpf", "-e", "trace=connect,sendto,sendmsg", "-o", trace, "dotnet", Path.Combine(AppContext.BaseDirectory, "triage.dll"), .. arguments]) { RedirectStandardOutput = true };
            (start.Environment["HOME"], start.Environment["XDG_CACHE_HOME"], start.Environment["XDG_DATA_HOME"], start.Environment["XDG_RUNTIME_DIR"]) = (home, cache, cache, run);
            using var command = Process.Start(start)!;
            await use(command);
            await command.WaitForExitAsync(TestContext.Current.CancellationToken);
            Assert.DoesNotContain(await File.ReadAllLinesAsync(trace, TestContext.Current.CancellationToken), line => Outside().IsMatch(line));
            Assert.All(
                Directory.EnumerateFiles(home, "*", SearchOption.AllDirectories).Where(f => f != trace),
                file => Assert.True(file.StartsWith(Path.Combine(cache, "triage"), StringComparison.Ordinal) || file.StartsWith(Path.Combine(run, "triage"), StringComparison.Ordinal), file));
        }
        finally
        {
            Directory.Delete(home, recursive: true);
        }
    }

    [GeneratedRegex(@"sa_family=AF_INET6?\b(?!.*(?:127\.0\.0\.1|""::1""))")]
    private static partial Regex Outside();
}
