using Triage.Notes.Kinds;
using Triage.Workshop.Jobs;
using Triage.Workshop.Model;

namespace Triage.Workshop.Answers;

/// <summary>The last thing done to a machine, and whether it has worked since.</summary>
/// <param name="Action">Reset or fix id.</param>
/// <param name="Works">Seen to work right after.</param>
/// <param name="StillWorks">Seen to work later, or not; null when nobody tried.</param>
internal sealed record MachineWorks(string Action, bool IsReset, bool Works, bool? StillWorks)
{
    public static bool After(Job job, JobEvidence evidence) => LastAction(job, evidence) is { Works: true, StillWorks: not false };

    /// <summary>Null when nothing was done yet.</summary>
    public static MachineWorks? LastAction(Job job, JobEvidence evidence)
    {
        if (job.Log.LastAction() is not { } last)
            return null;
        var action = last.Action()!;
        var held = job.Log.SkipWhile(e => e != last).OfType<Held>().LastOrDefault(h => h.Action == action);
        return new(action, last is ResetTried, last.EffectSeen() == Effect.Works, held?.StillWorks ?? (evidence.SeenAgainAfter(last) ? false : null));
    }
}
