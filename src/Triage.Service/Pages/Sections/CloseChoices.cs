using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Workshop;
using Triage.Workshop.Answers;
using Triage.Workshop.Translating;

namespace Triage.Service.Pages.Sections;

/// <summary>Causes to choose from when a job is closed. After a fix that worked nothing is likely to be left, so they are ranked as before it.</summary>
internal static class CloseChoices
{
    public static ImmutableArray<RankedCause> Of(Bench now, Job job, Answer answer)
    {
        var fix = job.Log.LastOrDefault(e => e is Fixed { Effect: Effect.Works } or Swapped { Effect: Effect.Works });
        var before = fix is null ? answer : now.AnswerFor(job with { Log = [.. job.Log.TakeWhile(e => e != fix)] }).Answer ?? answer;
        var id = fix switch { Fixed f => f.Fix, Swapped s => s.Fix, _ => null };
        return
        [
            .. before.Causes
                .Where(c => c.Fault is not (SpecialFaults.Unlisted or SpecialFaults.NothingWrong))
                .OrderByDescending(c => id is not null && now.Notes.Find<Fault>(c.Fault)?.Mends.Any(m => m.Id == id) == true),
        ];
    }
}
