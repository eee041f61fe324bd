using System.Diagnostics;
using Triage.Notes.Kinds;

namespace Torture.Attacks;

/// <summary>
/// The book lies on a disk of its own, in a file. Right after an acknowledgement the file is copied, as the disk would be found after the power
/// had gone; the copy is mounted, and holds everything that was acknowledged so far.
/// </summary>
internal sealed class PowerCuts : IAttack
{
    private const int Cuts = 10, Megabytes = 24;

    private readonly Lazy<bool> mayMount = new(MayMount);

    public string Name => "power";

    public string Blows => "cuts";

    public string? Cannot => mayMount.Value ? null : "mounting a disk image is not allowed.";

    public async Task Run(Round round)
    {
        var (disk, found) = (Path.Combine(round.Outside, "disk"), Path.Combine(round.Outside, "found"));
        using var mounted = new Mounted(disk, Made(disk));
        var folder = Path.Combine(mounted.Place, "book");
        Directory.CreateDirectory(folder);
        foreach (var file in Directory.GetFiles(round.Folder))
            File.Copy(file, Path.Combine(folder, Path.GetFileName(file)));
        await using var bench = round.Open(folder: folder);
        var acknowledged = new List<string>();
        for (var cut = 0; cut < Cuts; cut++)
        {
            await Task.Delay(round.Random.Next(30));
            var (job, line) = Record(bench, cut);
            File.Copy(disk, found, overwrite: true);
            round.Blow();
            round.Elsewhere++;
            acknowledged.Add(line);
            using var after = new Mounted(found, found + ".at");
            await using var reopened = round.Open(folder: Path.Combine(after.Place, "book"));
            var there = reopened.Current.Notes.Jobs.SelectMany(j => j.Log.OfType<QuickLine>().Select(l => l.Text).Append(j.Complaint)).ToHashSet();
            round.Lost += acknowledged.Count(a => !there.Contains(a)) + (reopened.Current.Notes.Find<Job>(job) is null ? 1 : 0);
        }
    }

    /// <summary>A line on the open job, or a machine taken in.</summary>
    private static (string Job, string Said) Record(Triage.Workshop.LiveBench bench, int cut)
    {
        var said = Round.NewLine("somebody");
        var done = cut % 3 == 0 ? bench.Steps.TakeIn(new() { Machine = "aldine-c1", Complaint = said }) : bench.Steps.Line(Round.Job, said);
        return done.Refused is { } why ? throw new InvalidOperationException(why.ToString()) : (done.Job!.Id, said);
    }

    private static string Made(string disk)
    {
        using (var file = File.Create(disk))
            file.SetLength(Megabytes * 1_000_000L);
        return Ran("mkfs.ext4", "-q", disk) ? disk + ".at" : throw new InvalidOperationException("mkfs.ext4 failed.");
    }

    private static bool MayMount()
    {
        var place = Directory.CreateTempSubdirectory("torture-").FullName;
        try
        {
            var disk = Path.Combine(place, "disk");
            using var mounted = new Mounted(disk, Made(disk));
            return true;
        }
        catch (Exception e) when (e is InvalidOperationException or System.ComponentModel.Win32Exception)
        {
            return false;
        }
        finally
        {
            Directory.Delete(place, recursive: true);
        }
    }

    private static bool Ran(string command, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(command, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        process.WaitForExit();
        return process.ExitCode == 0;
    }

    private sealed class Mounted : IDisposable
    {
        public Mounted(string disk, string place)
        {
            Place = Directory.CreateDirectory(place).FullName;
            if (!Ran("mount", "-o", "loop", disk, place))
                throw new InvalidOperationException($"{disk} cannot be mounted.");
        }

        public string Place { get; }

        public void Dispose()
        {
            Ran("umount", Place);
            Directory.Delete(Place);
        }
    }
}
