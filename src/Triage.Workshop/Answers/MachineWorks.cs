using Triage.Notes.Kinds;

namespace Triage.Workshop.Answers;

/// <summary>The last thing done to a machine, and whether it has worked since.</summary>
/// <param name="Action">Reset or fix id.</param>
/// <param name="Works">Seen to work right after.</param>
/// <param name="StillWorks">Seen to work later, or not; null when nobody tried.</param>
internal sealed record MachineWorks(string Action, bool IsReset, bool Works, bool? StillWorks)
{
    public static bool After(Job job) => LastAction(job) is { Works: true, StillWorks: not false };

    /// <summary>Null when nothing was done yet.</summary>
    public static MachineWorks? LastAction(Job job)
    {
        var last = job.Log.LastOrDefault(e => e is ResetTried or Fixed or Swapped { Fix: not null });
        return last switch
        {
            ResetTried reset => Of(reset.Reset, isReset: true, reset.Effect, last, job),
            Fixed fix => Of(fix.Fix, isReset: false, fix.Effect, last, job),
            Swapped { Fix: { } fix } swap => Of(fix, isReset: false, swap.Effect, last, job),
            _ => null,
        };
    }

    private static MachineWorks Of(string action, bool isReset, Effect effect, LogEntry entry, Job job) =>
        new(action, isReset, effect == Effect.Works, job.Log.SkipWhile(e => e != entry).OfType<Held>().LastOrDefault(h => h.Action == action)?.StillWorks);
}
