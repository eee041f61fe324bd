using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Workshop.Steps;

/// <summary>Closes a job, and says what that changed in the knowledge.</summary>
internal sealed class Closing(LiveBooks bench, JobNotes notes)
{
    public StepResult Close(string id, CloseRequest request, DateTimeOffset now)
    {
        var before = bench.Current;
        if (Refuses(before, id, request) is { } refused)
            return new() { Refused = refused };
        var job = before.Notes.Find<Job>(id)!;
        var (causes, written) = WithNewCause(job, request, now);
        if (written is not null)
            return new() { Refused = written };
        var closed = notes.Close(id, request with { Causes = causes }, now);
        if (closed.Refused is not null || closed.Job is null)
            return closed;
        return closed with
        {
            Taught = Reviews.Taught.By(before.Knows, bench.Current.Knows, closed.Job),
            Remarks = causes.IsEmpty && request.Outcome != JobOutcome.NothingWrong ? [.. closed.Remarks, "Closed without a cause: it can be found, but it teaches the numbers nothing."] : closed.Remarks,
        };
    }

    private Refusal? Refuses(Bench bench, string id, CloseRequest request)
    {
        if (bench.Notes.Find<Job>(id) is not { } job)
            return notes.Missing(id);
        if (!job.IsOpen)
            return WorkshopRefusals.JobClosed(id);
        if (request.Minutes < 0)
            return WorkshopRefusals.Negative("time", request.Minutes.Value);
        var unknown = request.Causes.Select(c => c.Fault).Concat(request.Damage).FirstOrDefault(f => bench.Notes.Find<Fault>(f) is null);
        return unknown is null ? null : WorkshopRefusals.NoSuch("fault", unknown, Near(unknown, bench.Notes.Of<Fault>()));
    }

    private static IEnumerable<string> Near(string id, IEnumerable<Note> notes) =>
        Triage.Notes.Nearest.To(id, notes.Select(n => n.Id)) is { } near ? [near] : [];

    /// <summary>
    /// A cause in free words becomes a fault note of the machine's class that often shows what this machine showed: whoever closes the job
    /// says so, and one job alone would drown among many.
    /// </summary>
    private (ImmutableArray<FoundCause> Causes, Refusal? Refused) WithNewCause(Job job, CloseRequest request, DateTimeOffset now)
    {
        if (string.IsNullOrWhiteSpace(request.NewCause))
            return (request.Causes, null);
        var words = request.NewCause.Trim();
        var known = bench.Current.Notes;
        var listed = known.Of<Fault>().FirstOrDefault(f => f.Name.Equals(words, StringComparison.OrdinalIgnoreCase));
        if (listed is not null)
            return (request.Causes.Add(new(listed.Id, request.NewCauseGrade)), null);
        var fault = new FromJob(known, job).Fault(words);
        var causes = request.Causes.Add(new(fault.Id, request.NewCauseGrade, WasNew: true));
        return (causes, notes.RefusesToClose(job.Id, request with { Causes = causes }, now) ?? notes.CreateNote(fault));
    }
}
