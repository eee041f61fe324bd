using Triage.Notes.Kinds;
using Triage.Workshop.Jobs;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Reviews;

/// <summary>A closed job that saw as normal, while it was still broken, what its cause nearly always shows.</summary>
/// <param name="Job">Job id.</param>
/// <param name="Fault">Cause of the job.</param>
/// <param name="Finding">Finding id.</param>
/// <param name="Chance">That the cause shows it, as its note says, 0 … 1.</param>
public sealed record Contradiction(string Job, string Fault, string FaultName, string Finding, string FindingName, double Chance)
{
    /// <summary>"Almost always" in the words of notes (<see cref="FrequencyWords"/>).</summary>
    private const double NearlyAlways = 0.95;

    /// <summary>Grades that are sure of the cause: hearsay that does not fit is no contradiction yet.</summary>
    internal static IEnumerable<Contradiction> In(Job job, Notebook notes) =>
        from cause in job.Causes
        where cause.Grade is Grade.Measured or Grade.Swapped && cause.Chance == 1
        let fault = notes.Find<Fault>(cause.Fault)
        where fault is not null
        from shows in fault.Shows
        where shows.Chance.Probability >= NearlyAlways && shows.When.IsEmpty && shows.EveryMinutes is null
        let finding = notes.Find<Finding>(shows.Finding)
        where finding is { Nominal: false } && SeenAsNormal(job, finding, notes)
        select new Contradiction(job.Id, fault.Id, fault.Name, finding.Id, finding.Name, shows.Chance.Probability);

    private static bool SeenAsNormal(Job job, Finding finding, Notebook notes) =>
        job.Log.AsItCameIn().Select(e => e switch
        {
            Saw { When.IsEmpty: true } saw when notes.Today(saw.Finding) == finding.Id => saw.Value,
            Tested tested when notes.Find<Test>(tested.Test)?.Reveals is { } reveals && notes.Today(reveals) == finding.Id => tested.Outcome,
            _ => null,
        }).LastOrDefault(v => v is not null) == finding.Values[0].Id;
}
