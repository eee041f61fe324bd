using System.Text;
using Microsoft.Extensions.Time.Testing;
using Triage.Notes.Kinds;
using Triage.Notes.Parsing;
using Triage.Workshop.Books;

namespace Triage.Workshop.Tests.Store;

/// <summary>A book of its own in a temporary folder, with one open job.</summary>
internal sealed class SmallBook : IDisposable
{
    public const string JobId = "2026-001";
    public const string JobPath = "jobs/2026/2026-001.md";

    public static string OpenJob { get; } =
        $"---\nformat: 1\nkind: job\nid: {JobId}\nname: A radio\nunit: radio\nopened: 2026-01-05T09:00:00+01:00\ncomplaint: crackles\n---\nOn the shelf.\n";

    public SmallBook(string? folder = null)
    {
        Folder = folder ?? Directory.CreateTempSubdirectory("book-").FullName;
        Write(JobPath, OpenJob);
        LongAgo(JobPath);
    }

    public string Folder { get; }

    public FakeTimeProvider Clock { get; } = new(new DateTimeOffset(2026, 11, 2, 9, 0, 0, TimeSpan.FromHours(1)));

    internal LiveBench Open(bool watch = false, Disk? disk = null) =>
        LiveBench.Open(new() { Books = [new("demo", Folder, Trust.Own, Writable: true)], Clock = Clock, Watch = watch, Disk = disk ?? Disk.Real });

    public string At(string path) => Path.Combine(Folder, path);

    public void Write(string path, string text)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(At(path))!);
        File.WriteAllText(At(path), text);
    }

    /// <summary>Nobody is saving the file just now.</summary>
    public void LongAgo(string path) => File.SetLastWriteTimeUtc(At(path), DateTime.UtcNow.AddHours(-1));

    /// <summary>The job as its file says now; null when the file is no whole note.</summary>
    public Job? OnDisk(string path = JobPath) =>
        NoteReader.Read("demo", path, File.ReadAllBytes(At(path))) is { Note: Job job, Problems.IsEmpty: true } ? job : null;

    public static IEnumerable<string> Lines(Job job) => job.Log.OfType<QuickLine>().Select(l => l.Text);

    public void Dispose()
    {
        if (Directory.Exists(Folder))
            Directory.Delete(Folder, recursive: true);
    }
}
