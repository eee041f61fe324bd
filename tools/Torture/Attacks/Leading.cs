using System.Diagnostics;

namespace Torture.Attacks;

/// <summary>Links that lead out of the book, and pipes that nobody writes into, come and go while somebody records.</summary>
internal sealed class Leading : IAttack
{
    private const int Traps = 40;

    public string Name => "links";

    public string Blows => "traps";

    public string? Cannot => OperatingSystem.IsWindows() ? "only administrators make links." : null;

    public async Task Run(Round round)
    {
        var secret = Path.Combine(round.Outside, "2019-001.md");
        File.WriteAllText(secret, "---\nformat: 1\nkind: job\nid: 2019-001\nname: Not ours\ndevice: aldine-c1\nopened: 2019-01-01T10:00:00+00:00\n---\n");
        var before = Convert.ToHexString(File.ReadAllBytes(secret));
        await using var bench = round.Open(watch: true);
        for (var n = 0; n < Traps; n++)
        {
            Set(round, secret, Path.Combine(round.Folder, $"trap-{n}{(n % 2 == 0 ? ".md" : "")}"));
            round.Blow();
            round.Record(bench, "somebody");
            if (bench.Current.Notes.Find<Triage.Notes.Kinds.Note>("2019-001") is not null)
                round.Lost++;
        }

        bench.Rescan();
        await using var fresh = round.Open();
        round.Lost += new[] { bench, fresh }.Count(b => b.Current.Notes.Find<Triage.Notes.Kinds.Note>("2019-001") is not null);
        round.Lost += Convert.ToHexString(File.ReadAllBytes(secret)) == before && Directory.GetFiles(round.Outside).Length == 1 ? 0 : 1;
        foreach (var trap in Directory.EnumerateFileSystemEntries(round.Folder, "trap-*"))
            File.Delete(trap);
    }

    private static void Set(Round round, string secret, string trap)
    {
        switch (round.Random.Next(3))
        {
            case 0:
                File.CreateSymbolicLink(trap, secret);
                break;
            case 1:
                Directory.CreateSymbolicLink(trap, round.Outside);
                break;
            default:
                using (var pipe = Process.Start("mkfifo", [trap]))
                    pipe.WaitForExit();
                break;
        }
    }
}
