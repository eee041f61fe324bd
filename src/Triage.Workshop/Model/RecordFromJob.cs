using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Reasoning.Learning;
using Triage.Workshop.Jobs;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Model;

/// <summary>What a closed job tells the learner.</summary>
internal static class RecordFromJob
{
    /// <summary>Null while the job is open, or when nobody said what it was.</summary>
    /// <param name="trust">Trust in the book, 0 … 1.</param>
    public static JobRecord? Of(Job job, Notebook notes, double trust)
    {
        if (job.Outcome is null || job.Closed is null)
            return null;
        var causes = Causes(job, notes);
        if (causes.IsEmpty)
            return null;
        return new()
        {
            Id = job.Id,
            Closed = job.Closed.Value,
            Levels = Levels(job, notes),
            Scope = ScopesFromNotes.Of(job, notes),
            Causes = causes,
            Weight = trust * (job.Causes.IsEmpty ? GradeWeights.Of(Grade.HoldUnknown) : job.Causes.Max(c => GradeWeights.Of(c.Grade))),
            Checked = Checked(job, notes),
            Tried = Tried(job, notes),
        };
    }

    private static ImmutableArray<string> Levels(Job job, Notebook notes)
    {
        var device = notes.Find<Device>(job.Device);
        return device is not null ? [device.Id, device.Class] : job.Class is { } known ? [notes.Today(known)] : [];
    }

    /// <summary>A machine with nothing wrong has that as its cause.</summary>
    private static ImmutableArray<JobCause> Causes(Job job, Notebook notes) =>
        job.Causes.IsEmpty
            ? job.Outcome == JobOutcome.NothingWrong ? [new(SpecialFaults.NothingWrong)] : []
            : [.. job.Causes.Select(c => new JobCause(notes.Today(c.Fault), c.Chance, c.WasNew))];

    /// <summary>
    /// Findings of the unit as it came in, the first value seen of each: from the moment something works for good,
    /// what is seen is no longer what the cause does.
    /// </summary>
    private static ImmutableArray<CheckedFinding> Checked(Job job, Notebook notes) =>
        [.. job.Log.TakeWhile(e => !WorksForGood(e, job))
            .Select(e => Seen(e, notes))
            .OfType<CheckedFinding>()
            .DistinctBy(c => c.Finding)];

    private static bool WorksForGood(LogEntry entry, Job job) => entry switch
    {
        Fixed { Effect: Effect.Works } f => !FellBack(f.Fix, job),
        Swapped { Effect: Effect.Works } => true,
        ResetTried { Effect: Effect.Works } r => !FellBack(r.Reset, job),
        _ => false,
    };

    private static bool FellBack(string action, Job job) => job.Log.OfType<Held>().Any(h => h.Action == action && !h.StillWorks);

    private static CheckedFinding? Seen(LogEntry entry, Notebook notes) => entry switch
    {
        Saw saw => Known(saw.Finding, saw.Value, notes),
        Tested tested when notes.Find<Test>(tested.Test) is { Reveals: { } finding } => Known(finding, tested.Outcome, notes),
        _ => null,
    };

    private static CheckedFinding? Known(string id, string value, Notebook notes) =>
        notes.Find<Finding>(id) is { } finding && finding.IndexOf(value) >= 0 ? new(finding.Id, value) : null;

    private static ImmutableArray<TriedAction> Tried(Job job, Notebook notes) =>
    [
        .. from entry in job.Log
           let action = entry.Action()
           where action is not null
           select Tried(entry is ResetTried ? GeneralForm(action, notes) : action, action, entry.EffectSeen()!.Value, entry.At, job),
    ];

    /// <param name="asLogged">The id under which its holding was recorded.</param>
    private static TriedAction Tried(string action, string asLogged, Effect effect, DateTimeOffset at, Job job) => ComebackAfter(at, effect, job) is { } back
        ? new(action, Works(effect), false, Math.Max(0, (back - at).TotalDays))
        : new(action, Works(effect), StillHeld(asLogged, job), QuietDays(at, job));

    /// <summary>When the fault was back that the last action which worked had mended; null when nobody said so.</summary>
    private static DateTimeOffset? ComebackAfter(DateTimeOffset at, Effect effect, Job job)
    {
        var last = job.Log.LastOrDefault(e => e.EffectSeen() == Effect.Works);
        return effect == Effect.Works && last?.At == at ? job.FollowUps.Where(f => f.CameBack).Select(f => (DateTimeOffset?)f.On).Min() : null;
    }

    private static string GeneralForm(string reset, Notebook notes) =>
        notes.Find<Reset>(reset) is { } known ? known.FormOf ?? known.Id : reset;

    private static bool? Works(Effect effect) => effect switch
    {
        Effect.Works => true,
        Effect.NoChange or Effect.Worse => false,
        Effect.NotSeen => null,
    };

    private static bool? StillHeld(string action, Job job) =>
        job.Log.OfType<Held>().LastOrDefault(h => h.Action == action)?.StillWorks;

    /// <summary>Quiet until last heard from: no news stays no news.</summary>
    private static double QuietDays(DateTimeOffset done, Job job)
    {
        var heard = job.FollowUps.Where(f => !f.CameBack).Select(f => f.On).DefaultIfEmpty(done).Max();
        return Math.Max(0, (heard - done).TotalDays);
    }
}
