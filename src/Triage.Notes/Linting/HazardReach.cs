using Triage.Notes.Kinds;

namespace Triage.Notes.Linting;

/// <summary>
/// Steps that work where a class warns of a danger, and do not get its caution: the part lies behind the cover but the step does not say so,
/// or the step has a weaker caution of its own.
/// </summary>
internal static class HazardReach
{
    public static IEnumerable<Remark> NotInherited(ClassKnowledge known) =>
        from caution in known.Class.Cautions
        where caution.Reach is not null
        let behind = Behind(known.Class, caution.Reach!)
        from remark in Outside(known, caution, behind).Concat(Weaker(known, caution, behind))
        select remark;

    /// <summary>The step and all that lie behind it.</summary>
    private static HashSet<string> Behind(DeviceClass machines, string reach)
    {
        var behind = new HashSet<string> { reach };
        while (machines.Access.Where(s => s.Behind is { } b && behind.Contains(b) && !behind.Contains(s.Id)).ToList() is { Count: > 0 } more)
        {
            behind.UnionWith(more.Select(s => s.Id));
        }

        return behind;
    }

    private static IEnumerable<Remark> Outside(ClassKnowledge known, Caution caution, HashSet<string> behind) =>
        from fault in known.Faults
        where known.RoleOf(fault)?.Access is { } access && behind.Contains(access)
        from step in Touching(known, fault)
        where step.Effort.Power >= caution.Power
            && (step.Effort.Access is not { } own || !behind.Contains(own))
            && step.Effort.Cautions.All(c => c.Hazard != caution.Hazard)
        select new Remark(step.Note, step.At, KnowledgeProblems.NotBehind(step.Id, fault.Role!, caution, known.Class.Id));

    private static IEnumerable<Remark> Weaker(ClassKnowledge known, Caution caution, HashSet<string> behind) =>
        from step in Steps(known)
        where caution.HandOver && step.Effort.Power >= caution.Power && step.Effort.Access is { } access && behind.Contains(access)
            && step.Effort.Cautions.Any(c => c.Hazard == caution.Hazard && !c.HandOver)
        select new Remark(step.Note, step.At, KnowledgeProblems.WeakerCaution(step.Id, caution, known.Class.Id));

    /// <summary>What is done at the very part: measuring it, taking it out. What one looks at, listens to or tries may well be done with the case shut.</summary>
    private static IEnumerable<Step> Touching(ClassKnowledge known, Fault fault) =>
        known.Tests.Where(t => t.Way == TestWay.Measure && (t.Decides == fault.Id || (t.MeasuresRole is not null && ClassKnowledge.Measures(t, fault)))).Select(Of)
            .Concat(known.Mends.Where(m => m.Fault == fault && (m.Mend.Needs is not null || m.Mend.TakesOut)).Select(m => Of(known, m.Fault, m.Mend)));

    private static IEnumerable<Step> Steps(ClassKnowledge known) =>
        known.Tests.Select(Of)
            .Concat(known.Resets.Select(r => new Step(r.Id, r.Effort, r, null)))
            .Concat(known.Mends.Select(m => Of(known, m.Fault, m.Mend)));

    private static Step Of(Test test) => new(test.Id, test.Effort, test, null);

    private static Step Of(ClassKnowledge known, Fault fault, Mend mend)
    {
        var definer = known.Index.DefinerOf(mend.Id) ?? fault;
        return new(mend.Id, mend.Effort, definer, definer.References.FirstOrDefault(r => r.Kind == ReferenceKind.Fix && r.Id == mend.Id));
    }

    private sealed record Step(string Id, Effort Effort, Note Note, Reference? At);
}
