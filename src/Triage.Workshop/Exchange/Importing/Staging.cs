using System.Globalization;
using System.Text;
using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Notes.Writing;
using Triage.Workshop.Books;

namespace Triage.Workshop.Exchange.Importing;

/// <summary>
/// A hidden folder beside the place where the notes will stand. Jobs are written a thousand to a folder, each folder flushed and
/// then named; at the end all of it is renamed once. What a killed run of the same table and map has finished is used again.
/// </summary>
internal sealed class Staging
{
    /// <summary>Jobs in one folder.</summary>
    public const int FolderSize = 1_000;

    /// <summary>Waiting for the disk, not computing: flushes of several files end together.</summary>
    private const int Writers = 16;

    private readonly string folder;

    private Staging(string folder, LeftOver found) => (this.folder, Found) = (folder, found);

    public LeftOver Found { get; }

    private string Jobs => Path.Combine(folder, "jobs");

    /// <param name="fingerprint">Of the table, the map, and what is there already; another one makes what is staged useless.</param>
    public static Staging Open(string folder, string fingerprint)
    {
        var mark = Path.Combine(folder, ".fingerprint");
        var found = !Directory.Exists(folder) ? LeftOver.None
            : File.Exists(mark) && File.ReadAllText(mark) == fingerprint ? LeftOver.Continued
            : LeftOver.Cleared;
        if (found == LeftOver.Cleared)
            Directory.Delete(folder, recursive: true);
        var staging = new Staging(folder, found);
        Directory.CreateDirectory(staging.Jobs);
        File.WriteAllText(mark, fingerprint);
        return staging;
    }

    /// <summary>Writes a folder of jobs unless it is there whole.</summary>
    public void WriteJobs(int number, IReadOnlyCollection<Job> jobs)
    {
        var name = number.ToString("0000", CultureInfo.InvariantCulture);
        var (whole, half) = (Path.Combine(Jobs, name), Path.Combine(Jobs, $".{name}.half"));
        if (Directory.Exists(whole))
            return;
        if (Directory.Exists(half))
            Directory.Delete(half, recursive: true);
        Directory.CreateDirectory(half);
        Write(half, jobs);
        Disk.Real.FlushFolder(half);
        Directory.Move(half, whole);
        Disk.Real.FlushFolder(Jobs);
    }

    public void WriteKnowledge(IEnumerable<Note> notes)
    {
        foreach (var kind in notes.GroupBy(n => Words.Of(n.Kind), StringComparer.Ordinal))
        {
            var of = Directory.CreateDirectory(Path.Combine(folder, kind.Key + "s")).FullName;
            Write(of, [.. kind]);
            Disk.Real.FlushFolder(of);
        }
    }

    /// <summary>Everything in place at once.</summary>
    public void Finish(string place)
    {
        File.Delete(Path.Combine(folder, ".fingerprint"));
        Disk.Real.FlushFolder(folder);
        Directory.Move(folder, place);
        Disk.Real.FlushFolder(Path.GetDirectoryName(Path.GetFullPath(place))!);
    }

    public void Clear() => Directory.Delete(folder, recursive: true);

    private static void Write(string folder, IReadOnlyCollection<Note> notes) =>
        Parallel.ForEach(notes, new ParallelOptions { MaxDegreeOfParallelism = Writers }, note =>
        {
            var bytes = Encoding.UTF8.GetBytes(NoteWriter.New(note));
            using var file = File.OpenHandle(Path.Combine(folder, note.Id + ".md"), FileMode.Create, FileAccess.Write, FileShare.None, FileOptions.None, bytes.Length);
            RandomAccess.Write(file, bytes, 0);
            RandomAccess.FlushToDisk(file);
        });
}
