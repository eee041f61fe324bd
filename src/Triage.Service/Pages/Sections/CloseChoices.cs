using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Workshop;
using Triage.Workshop.Answers;
using Triage.Workshop.Model;

namespace Triage.Service.Pages.Sections;

/// <summary>Causes to choose from when a job is closed: those that the fix which worked mends come first.</summary>
internal static class CloseChoices
{
    public static ImmutableArray<RankedCause> Of(Bench now, Job job, Answer answer)
    {
        var fix = job.Log.Select(e => e switch { Fixed { Effect: Effect.Works } f => f.Fix, Swapped { Effect: Effect.Works } s => s.Fix, _ => null }).LastOrDefault(id => id is not null);
        return
        [
            .. answer.Causes
                .Where(c => c.Fault is not (SpecialFaults.Unlisted or SpecialFaults.NothingWrong))
                .OrderByDescending(c => fix is not null && now.Notes.Find<Fault>(c.Fault)?.Mends.Any(m => m.Id == fix) == true),
        ];
    }
}
