using Triage.Notes.Kinds;
using Triage.Search.Meaning;
using Triage.Workshop;
using Triage.Workshop.Books;
using Triage.Workshop.Steps;

namespace Triage.Tools.Exam.Playing;

/// <summary>
/// The bench on which all machines of one book are played: general knowledge, and beside it a copy of the demo workshop or an empty
/// book. A machine that was played is discarded, so that the next one meets the bench as it was.
/// </summary>
internal sealed class ExamBench : IAsyncDisposable
{
    private readonly DirectoryInfo folder;

    private ExamBench(string book, DirectoryInfo folder, LiveBench live, SteppedClock clock) =>
        (Book, this.folder, Live, Clock) = (book, folder, live, clock);

    /// <summary>demo or empty.</summary>
    public string Book { get; }

    public LiveBench Live { get; }

    public SteppedClock Clock { get; }

    /// <param name="book">demo or empty.</param>
    /// <param name="kb">Folder with common and demo.</param>
    public static ExamBench Open(string book, string kb, SentenceVectors? meaning)
    {
        var folder = Directory.CreateTempSubdirectory("exam-");
        if (book == "demo")
            Copy(Path.Combine(kb, "demo"), folder.FullName);
        var clock = new SteppedClock();
        BookSource[] books = [new(book, folder.FullName, Writable: true), new("common", Path.Combine(kb, "common"))];
        return new(book, folder, LiveBench.Open(new() { Books = [.. books], Clock = clock, Meaning = meaning, Fits = new(Path.Combine(Path.GetTempPath(), "triage-fits-of-exams")), Watch = false }), clock);
    }

    /// <summary>Plays a machine from the counter to its end.</summary>
    public Course Play(TakeInRequest machine, IPlayer player) => WithJob(machine, job => new CourseOfSteps(this, job.Id, player).Play(), refused => Course.NotTakenIn(refused.ToString()));

    /// <summary>Takes a machine in, looks at it, and discards it.</summary>
    public T WithJob<T>(TakeInRequest machine, Func<Job, T> look, Func<Refusal, T> refused)
    {
        var taken = Live.Steps.TakeIn(machine);
        if (taken.Job is not { } job)
            return refused(taken.Refused!);
        try
        {
            return look(job);
        }
        finally
        {
            Discard(job);
        }
    }

    private void Discard(Job job)
    {
        File.Delete(Path.Combine(folder.FullName, job.Place.Path));
        Live.OnDisk.Reread(Live.OnDisk.Home!, [job.Place.Path]);
    }

    private static void Copy(string from, string to)
    {
        foreach (var file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }
    }

    public async ValueTask DisposeAsync()
    {
        await Live.DisposeAsync();
        folder.Delete(recursive: true);
    }
}
