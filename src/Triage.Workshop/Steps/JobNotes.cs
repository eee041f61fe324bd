using System.Collections.Immutable;
using System.Text;
using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Notes.Parsing;
using Triage.Notes.Writing;
using Triage.Workshop.Books;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Steps;

/// <summary>Writes what the job's steps say into the job's note, field by field, and lets the bench read it again.</summary>
internal sealed class JobNotes(LiveBooks bench)
{
    private const int MostTries = 1000;

    /// <summary>A number that another bench took meanwhile is left to it; the job gets the next one.</summary>
    public StepResult Create(Job job)
    {
        var refused = CreateIn(NotePaths.Of(job), job);
        for (var tries = 0; refused is { Kind: RefusalKind.ChangedMeanwhile } && tries < MostTries; tries++)
        {
            job = job with { Id = NoteIds.Next(job.Id) };
            refused = CreateIn(NotePaths.Of(job), job);
        }

        return refused is null ? Written(job.Id) : new() { Refused = refused };
    }

    public Refusal? CreateNote(Note note) => CreateIn(NotePaths.Of(note), note);

    /// <summary>The model gets a note of its own: the words that stood for it are no longer needed.</summary>
    public StepResult SetDevice(string id, string device) => Change(id, mustBeOpen: true, OfModel(device));

    /// <summary>Why it could not; as for <see cref="RefusesToClose"/>.</summary>
    public Refusal? RefusesDevice(string id, string device) => Refuses(id, OfModel(device));

    /// <param name="rule">A rule that looks at the job as it is when the lock is held; null to let it pass.</param>
    public StepResult Append(string id, LogEntry entry, Func<Job, Refusal?>? rule = null) =>
        Change(id, mustBeOpen: true, (job, text) => rule?.Invoke(job) is { } refused ? new(null, refused) : new(text.Append(["log"], LogEntryYaml.Of(entry)), null));

    /// <summary>Several entries in one write: all of them or none.</summary>
    public StepResult Append(string id, IReadOnlyList<LogEntry> entries) =>
        Change(id, mustBeOpen: true, (_, text) => new(entries.Aggregate(text, (t, entry) => t.Append(["log"], LogEntryYaml.Of(entry))), null));

    /// <param name="edit">The note's text and the entry's index as written in paths.</param>
    public StepResult ChangeEntry(string id, int entry, Func<NoteText, string, NoteText> edit) =>
        Change(id, mustBeOpen: true, (job, text) => entry < 0 || entry >= job.Log.Length
            ? new(null, WorkshopRefusals.NoSuchEntry(id, entry, job.Log.Length))
            : new(edit(text, entry.ToString(System.Globalization.CultureInfo.InvariantCulture)), null));

    public StepResult RemoveEntry(string id, int entry)
    {
        LogEntry? gone = null;
        var result = Change(id, mustBeOpen: true, (job, text) =>
        {
            if (entry < 0 || entry >= job.Log.Length)
                return new(null, WorkshopRefusals.NothingToUndo(id));
            gone = job.Log[entry];
            return new(text.Remove(["log", entry.ToString(System.Globalization.CultureInfo.InvariantCulture)]), null);
        });
        return result.Refused is null ? result with { TakenBack = gone } : result;
    }

    /// <param name="at">Index it gets; what lies there and behind moves on.</param>
    public StepResult InsertEntry(string id, int at, LogEntry entry) =>
        Change(id, mustBeOpen: true, (_, text) => new(text.Insert(["log"], at, LogEntryYaml.Of(entry)), null));

    public StepResult SetConsent(string id, Consent consent) =>
        Change(id, mustBeOpen: true, (_, text) => new(text.Set(["consent"], JobYaml.Of(consent)), null));

    public StepResult SetBuild(string id, Build build) =>
        Change(id, mustBeOpen: true, (job, text) => new(text.Set(["build"], WriteBuild.Of(job.Build.With(build))), null));

    public StepResult SetWaiting(string id, Waiting? waiting) =>
        Change(id, mustBeOpen: true, (_, text) => new(waiting is null ? text.Remove(["waits-for"]) : text.Set(["waits-for"], JobYaml.Of(waiting)), null));

    public StepResult AppendFollowUp(string id, FollowUp followUp) =>
        Change(id, mustBeOpen: false, (_, text) => new(text.Append(["follow-ups"], JobYaml.Of(followUp)), null));

    public StepResult Close(string id, CloseRequest request, DateTimeOffset now) => Change(id, mustBeOpen: true, Closed(request, now));

    /// <summary>Why it could not be closed like this; what is written before it is closed would be left over.</summary>
    public Refusal? RefusesToClose(string id, CloseRequest request, DateTimeOffset now) => Refuses(id, Closed(request, now));

    private static Func<Job, NoteText, TextEdit> Closed(CloseRequest request, DateTimeOffset now) => (job, text) => new(ClosedNote.Of(text, job, request, now), null);

    private static Func<Job, NoteText, TextEdit> OfModel(string device) =>
        (_, text) => new(text.Remove(["unit"]).Remove(["class"]).Set(["device"], YamlValue.Of(device)), null);

    private Refusal? Refuses(string id, Func<Job, NoteText, TextEdit> edit)
    {
        if (bench.Current.Notes.Find<Job>(id) is not { } known || bench.FolderOf(known.Place)?.Read(known.Place.Path) is not { } bytes)
            return Missing(id);
        var (text, refused) = Edited(bytes, known, mustBeOpen: true, edit);
        return refused ?? ReadBack.Refuses(known.Place.Path, bytes, text!.Bytes);
    }

    private Refusal? CreateIn(string path, Note note)
    {
        if (bench.Home is not { } home)
            return WorkshopRefusals.NoWritableBook();
        var refused = home.Create(path, Encoding.UTF8.GetBytes(NoteWriter.New(note)));
        if (refused is null)
            bench.Reread(home, [path]);
        return refused;
    }

    /// <summary>The edit is made on the file as it is on disk under the lock, so that what others added meanwhile stays.</summary>
    private StepResult Change(string id, bool mustBeOpen, Func<Job, NoteText, TextEdit> edit)
    {
        if (bench.Current.Notes.Find<Job>(id) is not { } known)
            return new() { Refused = Missing(id) };
        if (bench.Writable(known.Place) is not { } book)
            return new() { Job = known, Refused = WorkshopRefusals.NotEditable(known.Place.Path, $"book “{known.Place.Book}” was opened for reading only.") };
        Refusal? refused = null;
        var failed = book.Change(known.Place.Path, bytes =>
        {
            (var text, refused) = Edited(bytes, known, mustBeOpen, edit);
            return text?.Bytes.ToArray();
        });
        bench.Reread(book, [known.Place.Path]);
        return (failed ?? refused) is { } why ? new() { Job = bench.Current.Notes.Find<Job>(id), Refused = why } : Written(known.Id, book);
    }

    /// <summary>Why there is no job to work on under this id.</summary>
    public Refusal Missing(string id) => bench.Unusable(id) is var (place, why)
        ? WorkshopRefusals.NotEditable(place.Path, why)
        : WorkshopRefusals.NoSuch("job", id, Nearest.To(id, bench.Current.Notes.Jobs.Select(j => j.Id)) is { } near ? [near] : []);

    private static TextEdit Edited(byte[] bytes, Job known, bool mustBeOpen, Func<Job, NoteText, TextEdit> edit)
    {
        var place = known.Place;
        var reading = NoteReader.Read(place.Book, place.Path, bytes);
        if (reading.Note is not Job job || !reading.Text.Editable)
            return new(null, WorkshopRefusals.NotEditable(place.Path, reading.Problems.OrderByDescending(p => p.Severity).FirstOrDefault()?.What ?? "it is no job."));
        if (job.Id != known.Id)
            return new(null, WorkshopRefusals.NotEditable(place.Path, $"it is job {job.Id} now."));
        try
        {
            return mustBeOpen && !job.IsOpen ? new(null, WorkshopRefusals.JobClosed(job.Id)) : edit(job, reading.Text);
        }
        catch (InvalidOperationException e)
        {
            return new(null, WorkshopRefusals.NotEditable(place.Path, e.Message));
        }
    }

    private StepResult Written(string id, BookFolder? book = null)
    {
        ImmutableArray<string> kept = [.. book?.Kept.Told() ?? []];
        return new() { Job = bench.Current.Notes.Find<Job>(id), Kept = kept, Remarks = [.. kept.Select(WorkshopRemarks.KeptFromAnEditor)] };
    }
}
