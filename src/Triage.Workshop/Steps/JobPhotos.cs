using System.Security.Cryptography;
using Triage.Notes.Kinds;
using Triage.Notes.Writing;

namespace Triage.Workshop.Steps;

/// <summary>Photos beside a job's note, each in a file named by its content: the same photo twice is one file.</summary>
internal sealed class JobPhotos(LiveBooks bench, JobNotes notes)
{
    private const int Digits = 16;

    /// <summary>Keeps the file, then names it in the note: killed between the two, a file too many lies there and nothing is lost.</summary>
    /// <param name="record">Writes the path into the note.</param>
    public StepResult Keep(string id, ReadOnlyMemory<byte> photo, Func<string, StepResult> record)
    {
        if (photo.Length > Limits.Photo)
            return new() { Refused = WorkshopRefusals.PhotoTooBig(photo.Length, Limits.Photo) };
        if (PhotoKind.Of(photo.Span) is not { } kind)
            return new() { Refused = WorkshopRefusals.NoPhoto() };
        if (bench.Current.Notes.Find<Job>(id) is not { } job)
            return new() { Refused = notes.Missing(id) };
        if (!job.IsOpen)
            return new() { Job = job, Refused = WorkshopRefusals.JobClosed(id) };
        if (bench.Writable(job.Place) is not { } book)
            return new() { Job = job, Refused = WorkshopRefusals.NotEditable(job.Place.Path, $"book “{job.Place.Book}” was opened for reading only.") };
        var path = $"{job.Place.Path[..^".md".Length]}-{Convert.ToHexStringLower(SHA256.HashData(photo.Span))[..Digits]}.{kind.Ending}";
        var isNew = book.Read(path) is null;
        if (book.Keep(path, photo) is { } refused)
            return new() { Job = job, Refused = refused };
        var done = record(path);
        if (done.Refused is not null && isNew)
            book.TakeAway(path, job.Place.Path);
        return done;
    }

    public StepResult Attach(string id, int entry, string path) => notes.ChangeEntry(id, entry, (text, index) => text.Append(["log", index, "photos"], YamlValue.Of(path)));

    /// <summary>Bytes of a photo that the job's log names; null when it names none of this name, or the file is gone.</summary>
    public byte[]? Find(string id, string name) =>
        bench.Current.Notes.Find<Job>(id) is { } job
        && job.Log.SelectMany(e => e.Photos).FirstOrDefault(p => p.Split('/')[^1] == name) is { } path
            ? bench.FolderOf(job.Place)?.Read(path)
            : null;
}
