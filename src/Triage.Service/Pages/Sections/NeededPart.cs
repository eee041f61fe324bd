using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Workshop.Answers;

namespace Triage.Service.Pages.Sections;

/// <summary>The part that mending the likeliest cause takes.</summary>
/// <param name="Cause">Likeliest listed cause that a part mends.</param>
/// <param name="Fitted">Where the machine has it, with what is marked on it; empty when its parts list does not say.</param>
internal sealed record NeededPart(RankedCause Cause, Mend Mend, PartClass Class, ImmutableArray<DevicePart> Fitted)
{
    /// <summary>Null when no listed cause needs a part, or its class has no note.</summary>
    public static NeededPart? Of(JobView view) =>
        (from cause in view.Answer?.Causes ?? []
         let fault = view.Now.Notes.Find<Fault>(cause.Fault)
         where fault is not null
         from mend in fault.Mends
         let known = view.Now.Notes.Of<Fault>().SelectMany(f => f.Mends).FirstOrDefault(m => m.Id == mend.Id && m.Needs is not null)
         let part = view.Now.Notes.Find<PartClass>(known?.Needs)
         where part is not null
         select new NeededPart(cause, known, part, [.. (view.Scope?.Device?.Parts ?? []).Where(p => p.Part == part.Id && (fault.Role is null || p.Role is null || p.Role == fault.Role))]))
        .FirstOrDefault();
}
