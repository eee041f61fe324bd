using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Workshop.Answers;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Steps;

/// <summary>Closes a job, and says what that changed in the knowledge.</summary>
internal sealed class Closing(LiveBench bench, JobNotes notes)
{
    public StepResult Close(string id, CloseRequest request, DateTimeOffset now)
    {
        var before = bench.Current;
        if (Refuses(before, id, request) is { } refused)
            return new() { Refused = refused };
        var job = before.Notes.Find<Job>(id)!;
        var (causes, written) = WithNewCause(job, request);
        if (written is not null)
            return new() { Refused = written };
        var closed = notes.Close(id, request with { Causes = causes }, now);
        if (closed.Refused is not null || closed.Job is null)
            return closed;
        return closed with
        {
            Taught = Taught(before, bench.Current, closed.Job),
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
    private (ImmutableArray<FoundCause> Causes, Refusal? Refused) WithNewCause(Job job, CloseRequest request)
    {
        if (string.IsNullOrWhiteSpace(request.NewCause))
            return (request.Causes, null);
        var words = request.NewCause.Trim();
        var known = bench.Current.Notes;
        var listed = known.Of<Fault>().FirstOrDefault(f => f.Name.Equals(words, StringComparison.OrdinalIgnoreCase));
        if (listed is not null)
            return (request.Causes.Add(new(listed.Id, request.NewCauseGrade)), null);
        var fault = new FromJob(known, job).Fault(words);
        return (request.Causes.Add(new(fault.Id, request.NewCauseGrade, WasNew: true)), notes.CreateNote(fault));
    }

    public static ImmutableArray<Taught> Taught(Bench before, Bench after, Job job)
    {
        var causes = job.Causes.Where(c => after.Notes.Find<Fault>(c.Fault) is not null).ToList();
        var others = after.Notes.Of<Device>().OrderByDescending(d => d.Id == job.Device).ThenBy(d => d.Id, StringComparer.Ordinal);
        return
        [
            .. from device in others
               from cause in causes
               let asked = SameComplaint(job, device)
               let then = new Answering(after).Chance(asked, cause.Fault)
               where then is not null
               select new Taught(device.Id, device.Name, cause.Fault, WordsFor.CauseName(cause.Fault, after.Notes), new Answering(before).Chance(asked, cause.Fault) ?? 0, then.Value),
        ];
    }

    /// <summary>What the unit showed when it came in, on another device.</summary>
    private static Job SameComplaint(Job job, Device device) => job with
    {
        Device = device.Id,
        Outcome = null,
        Log = [.. job.Log.TakeWhile(e => e is not (ResetTried or Fixed or Swapped)).Where(e => e is Saw)],
    };
}
