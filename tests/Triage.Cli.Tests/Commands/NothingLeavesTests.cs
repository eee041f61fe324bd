using System.Diagnostics;
using System.Text.RegularExpressions;
using Xunit;

namespace Triage.Cli.Tests.Commands;

/// <summary>Watched by strace, a command that needs the sentence model speaks to nobody, and leaves nothing in a home but its own cache.</summary>
public sealed partial class NothingLeavesTests
{
    [Fact]
    [Trait("run", "thorough")]
    public async Task Asking_connects_to_nothing_and_writes_nowhere_else()
    {
        if (!File.Exists("/usr/bin/strace"))
            Assert.Skip("strace is not here: tools/needs strace.");
        var home = Directory.CreateTempSubdirectory("home-").FullName;
        try
        {
            Directory.CreateDirectory(Path.Combine(home, "cache"));
            var trace = Path.Combine(home, "trace");
            var start = new ProcessStartInfo("strace", ["-f", "--seccomp-bpf", "-e", "trace=connect,sendto,sendmsg", "-o", trace, "dotnet", Path.Combine(AppContext.BaseDirectory, "triage.dll"),
                "ask", "cassette deck squeals like a piglet after a tape", "--book", $"common={Path.Combine(Repository.Root, "kb", "common")}:known"]) { RedirectStandardOutput = true };
            (start.Environment["HOME"], start.Environment["XDG_CACHE_HOME"]) = (home, Path.Combine(home, "cache"));
            using var command = Process.Start(start)!;
            Assert.Contains("assette deck", await command.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken));
            await command.WaitForExitAsync(TestContext.Current.CancellationToken);
            Assert.DoesNotContain(await File.ReadAllLinesAsync(trace, TestContext.Current.CancellationToken), line => Outside().IsMatch(line));
            Assert.All(Directory.EnumerateFiles(home, "*", SearchOption.AllDirectories).Where(f => f != trace), f => Assert.Contains("/cache/triage", f, StringComparison.Ordinal));
        }
        finally
        {
            Directory.Delete(home, recursive: true);
        }
    }

    [GeneratedRegex(@"sa_family=AF_INET6?\b(?!.*(?:127\.0\.0\.1|""::1""))")]
    private static partial Regex Outside();
}
