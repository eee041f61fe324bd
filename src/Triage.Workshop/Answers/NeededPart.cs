using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Workshop.Knowledge;
using Triage.Workshop.Stock;

namespace Triage.Workshop.Answers;

/// <summary>The part that mending the likeliest cause takes.</summary>
/// <param name="Cause">Likeliest listed cause that a part mends.</param>
/// <param name="Fitted">Where the machine has it, with what is marked on it; empty when its parts list does not say.</param>
public sealed record NeededPart(RankedCause Cause, Mend Mend, PartClass Class, ImmutableArray<DevicePart> Fitted)
{
    /// <summary>Null when no listed cause needs a part, or its class has no note.</summary>
    /// <param name="scope">What is known of the job's machine; null when nothing is.</param>
    /// <param name="answer">To the job; null when there is none.</param>
    public static NeededPart? Of(Notebook notes, DeviceScope? scope, Answer? answer) =>
        (from cause in answer?.Causes ?? []
         let fault = notes.Find<Fault>(cause.Fault)
         where fault is not null
         from mend in fault.Mends
         let known = notes.Mends.FirstOrDefault(m => m.Id == mend.Id && m.Needs is not null)
         let part = notes.Find<PartClass>(known?.Needs)
         where part is not null
         select new NeededPart(cause, known, part, [.. (scope?.Device?.Parts ?? []).Where(p => p.Part == part.Id && (fault.Role is null || p.Role is null || p.Role == fault.Role))]))
        .FirstOrDefault();

    /// <summary>What lies in the drawer and may go in, best first.</summary>
    public ImmutableArray<DrawerFit> InDrawer(BenchSettings settings) => DrawerFit.Of(settings.Drawer, Class.Id, Fitted);
}
