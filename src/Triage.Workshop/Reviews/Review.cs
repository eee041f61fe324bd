using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Reasoning.Learning;
using Triage.Workshop.Answers.Wording;
using Triage.Workshop.Jobs;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Reviews;

/// <summary>Which fixes resolved which symptoms.</summary>
public sealed record Review
{
    /// <summary>One row for each finding value and action met together in a closed job, most tried first.</summary>
    public required ImmutableArray<ReviewRow> Rows { get; init; }

    public required int ClosedJobs { get; init; }

    /// <summary>Jobs whose cause is told or hearsay only.</summary>
    public required ImmutableArray<string> OnHearsay { get; init; }

    /// <summary>Tests done in closed jobs, those that found something soonest first.</summary>
    public required ImmutableArray<TestRecord> Tests { get; init; }

    /// <summary>Ids of jobs whose fault came back, newest first.</summary>
    public required ImmutableArray<string> Comebacks { get; init; }

    /// <summary>Jobs that saw as normal what their own cause nearly always shows.</summary>
    public required ImmutableArray<Contradiction> Contradictions { get; init; }
}

/// <summary>One symptom and one reset, swap or fix.</summary>
public sealed record ReviewRow
{
    /// <summary>Finding id.</summary>
    public required string Finding { get; init; }

    public required string Value { get; init; }

    /// <summary>In words: "nothing on the display".</summary>
    public required string Symptom { get; init; }

    /// <summary>Reset or fix id.</summary>
    public required string Action { get; init; }

    public required string ActionName { get; init; }

    public required int Tried { get; init; }

    public required int Worked { get; init; }

    /// <summary>Heard of as still good, or tried again, after it worked.</summary>
    public required int Held { get; init; }

    public required int CameBack { get; init; }

    /// <summary>90 % interval (Wilson 1927) of worked / tried.</summary>
    public required double Lower { get; init; }

    public required double Upper { get; init; }

    /// <summary>Ids of the jobs behind it, newest first.</summary>
    public required ImmutableArray<string> Jobs { get; init; }
}

/// <summary>Counts symptoms and fixes over closed jobs.</summary>
internal sealed class Reviewing(Notebook notes)
{
    private const double Level = 0.9;

    /// <param name="device">Only this device or class; null for all.</param>
    public Review Of(string? device)
    {
        var jobs = notes.Jobs.Where(j => !j.IsOpen && (device is null || j.Device == device || ClassOf(j) == device))
            .OrderByDescending(j => j.Closed).ThenByDescending(j => j.Id, StringComparer.Ordinal).ToList();
        var rows =
            from job in jobs
            from symptom in Symptoms(job)
            from action in Actions(job)
            group (job, action) by (symptom.Finding, symptom.Value, action.Id) into met
            let row = Row(met.Key.Finding, met.Key.Value, met.Key.Id, [.. met])
            orderby row.Tried descending, row.Worked descending, row.Symptom, row.ActionName
            select row;
        return new()
        {
            Rows = [.. rows],
            ClosedJobs = jobs.Count,
            OnHearsay = [.. jobs.Where(j => !j.Causes.IsEmpty && j.Causes.All(c => c.Grade is Grade.Told or Grade.Hearsay)).Select(j => j.Id)],
            Tests = TestRecord.Of(jobs, notes),
            Comebacks = [.. jobs.Where(CameBack).Select(j => j.Id)],
            Contradictions = [.. jobs.SelectMany(j => Contradiction.In(j, notes))],
        };
    }

    private string? ClassOf(Job job) => notes.Find<Device>(job.Device)?.Class ?? job.Class;

    /// <summary>Abnormal values of the machine as it came in.</summary>
    private IEnumerable<(string Finding, string Value)> Symptoms(Job job) =>
        job.Log.AsItCameIn()
            .OfType<Saw>()
            .Select(s => (Finding: notes.Today(s.Finding), s.Value))
            .Where(s => notes.Find<Finding>(s.Finding) is { } f && (f.Nominal || f.Values[0].Id != s.Value))
            .Distinct();

    private IEnumerable<Tried> Actions(Job job) =>
        (from entry in job.Log
         let action = entry.Action()
         where action is not null
         select new Tried(entry is ResetTried ? GeneralForm(action) : action, action, entry.EffectSeen()!.Value)).DistinctBy(t => t.Id);

    private string GeneralForm(string reset) => notes.Find<Reset>(reset) is { } known ? known.FormOf ?? known.Id : reset;

    private ReviewRow Row(string findingId, string value, string action, List<(Job Job, Tried Action)> met)
    {
        var finding = notes.Find<Finding>(findingId)!;
        var worked = met.Where(m => m.Action.Effect == Effect.Works).ToList();
        var interval = BinomialIntervals.Wilson(worked.Count, met.Count, Level);
        return new()
        {
            Finding = findingId,
            Value = value,
            Symptom = WordsFor.Value(finding, value),
            Action = action,
            ActionName = NameOf(action),
            Tried = met.Count,
            Worked = worked.Count,
            Held = worked.Count(m => Held(m.Job, m.Action.AsLogged) == true),
            CameBack = worked.Count(m => Held(m.Job, m.Action.AsLogged) == false),
            Lower = interval.Lower,
            Upper = interval.Upper,
            Jobs = [.. met.Select(m => m.Job.Id)],
        };
    }

    private string NameOf(string action) =>
        notes.Find<Reset>(action)?.Name
        ?? notes.Mend(action)?.Name
        ?? action;

    /// <summary>Null is no news.</summary>
    private static bool? Held(Job job, string action) =>
        job.Log.OfType<Held>().LastOrDefault(h => h.Action == action)?.StillWorks is { } held && !held ? false
        : job.FollowUps.Any(f => f.CameBack) ? false
        : job.FollowUps.Any(f => !f.CameBack) || job.Log.OfType<Held>().Any(h => h.Action == action && h.StillWorks) ? true
        : null;

    private static bool CameBack(Job job) => job.FollowUps.Any(f => f.CameBack);

    private sealed record Tried(string Id, string AsLogged, Effect Effect);
}
