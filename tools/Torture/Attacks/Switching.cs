using System.Diagnostics;

namespace Torture.Attacks;

/// <summary>git switches a hundred notes back and forth under the bench.</summary>
internal sealed class Switching : IAttack
{
    private const int Notes = 100, Switches = 6;

    public string Name => "git";

    public string Blows => "switches";

    public string? Cannot => Ran("/", "--version") ? null : "git is not installed.";

    public async Task Run(Round round)
    {
        Ran(round.Folder, "init", "-q", "-b", "one");
        Write(round, "one");
        Commit(round);
        Ran(round.Folder, "switch", "-q", "-c", "other");
        Write(round, "other");
        Commit(round);
        await using var bench = round.Open(watch: true);
        using var done = new CancellationTokenSource();
        var recording = Task.Run(() =>
        {
            while (!done.IsCancellationRequested)
                round.Record(bench, "somebody");
        });
        for (var n = 0; n < Switches; n++)
        {
            if (!Ran(round.Folder, "switch", "-q", n % 2 == 0 ? "one" : "other"))
                throw new InvalidOperationException("git would not switch.");
            round.Blow();
            await Task.Delay(round.Random.Next(600));
        }

        await done.CancelAsync();
        await recording;
    }

    private static void Write(Round round, string branch)
    {
        var folder = Directory.CreateDirectory(Path.Combine(round.Folder, "many")).FullName;
        for (var n = 0; n < Notes; n++)
            File.WriteAllText(Path.Combine(folder, $"2020-{n:000}.md"), $"---\nformat: 1\nkind: job\nid: 2020-{n:000}\nname: Job {n} on {branch}\ndevice: aldine-c1\nopened: 2020-01-01T10:00:00+00:00\noutcome: mended\nclosed: 2020-01-02T10:00:00+00:00\ncauses:\n  - {{fault: {(branch == "one" ? "backup-cap-shorted" : "settings-lost")}, grade: measured}}\n---\n");
    }

    /// <summary>Only the hundred: what is recorded meanwhile is not git's.</summary>
    private static void Commit(Round round)
    {
        Ran(round.Folder, "add", "many");
        Ran(round.Folder, "-c", "user.name=bench", "-c", "user.email=bench@localhost", "commit", "-q", "-m", "many");
    }

    private static bool Ran(string folder, params string[] arguments)
    {
        try
        {
            using var git = Process.Start(new ProcessStartInfo("git", ["-C", folder, .. arguments]) { RedirectStandardOutput = true, RedirectStandardError = true })!;
            git.WaitForExit();
            return git.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }
}
