using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Workshop;
using Triage.Workshop.Answers;
using Triage.Workshop.Jobs;
using Triage.Workshop.Model;

namespace Triage.Service.Shown;

/// <summary>Causes to choose from when a job is closed: those that the fix which worked mends come first.</summary>
internal static class CloseChoices
{
    public static ImmutableArray<RankedCause> Of(Bench now, Job job, Answer answer)
    {
        var fix = job.Log.LastOrDefault(e => e is Fixed or Swapped { Fix: not null } && e.EffectSeen() == Effect.Works)?.Action();
        return
        [
            .. answer.Causes
                .Where(c => c.Fault is not (SpecialFaults.Unlisted or SpecialFaults.NothingWrong))
                .OrderByDescending(c => fix is not null && now.Notes.Find<Fault>(c.Fault)?.Mends.Any(m => m.Id == fix) == true),
        ];
    }
}
