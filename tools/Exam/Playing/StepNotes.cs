using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Tools.Exam.Cases;
using Triage.Workshop.Answers;
using Triage.Workshop.Knowledge;

namespace Triage.Tools.Exam.Playing;

/// <summary>What a step of the product asks and needs, from the notes that describe it.</summary>
internal sealed class StepNotes(Notebook notes, DeviceScope scope)
{
    public const string Agreed = "agreed", HasToStay = "has-to-stay";

    /// <summary>The rows that a question, look, round or reading is answered by; none for what is done rather than looked at.</summary>
    public ImmutableArray<Asked> RowsOf(NextBestStep step) => (notes.Find<Test>(step.Id), notes.Find<Finding>(step.Id)) switch
    {
        _ when step.Kind == StepKind.Round => [.. step.Rows.Select(r => new Asked(r.Finding, r.Finding, r.Name, [.. r.Values.Select(v => new Choice(v.Value, v.Name))]))],
        ({ Reveals: { } finding }, _) => [OfFinding(step, notes.Today(finding))],
        ({ } measured, _) => [new(step.Id, null, step.Name, [.. measured.Outcomes.Select(o => new Choice(o.Id, o.Name))])],
        (_, { } finding) => [OfFinding(step, finding.Id)],
        _ when step.Id == AlwaysThere.AskConsent => [new(step.Id, null, step.Name, [new(Agreed, "agreed, or saved"), new(HasToStay, "it has to stay")])],
        _ => [],
    };

    /// <summary>The finding itself and every test that shows it.</summary>
    public IEnumerable<string> ThatShow(string? finding) =>
        finding is null ? [] : notes.Of<Test>().Where(t => t.Reveals is { } revealed && notes.Today(revealed) == finding).Select(t => t.Id).Prepend(finding);

    /// <summary>Null for what no note describes.</summary>
    public Effort? EffortOf(string id) =>
        notes.Find<Test>(id)?.Effort ?? notes.Find<Reset>(id)?.Effort ?? MendOf(id)?.Effort;

    public Mend? MendOf(string id) =>
        scope.Faults.SelectMany(f => f.Mends).FirstOrDefault(m => m.Id == id && m.Name is not null)
        ?? notes.Of<Fault>().SelectMany(f => f.Mends).FirstOrDefault(m => m.Id == id && m.Name is not null);

    /// <summary>Access steps that lead to it, outermost first, but for those that are open.</summary>
    public ImmutableArray<AccessStep> OpensFor(string id, ImmutableArray<string> open) =>
        EffortOf(id) is { } effort ? [.. scope.WayTo(effort).Where(a => !open.Contains(a.Id))] : [];

    /// <summary>Whether a machine of this build can have what the step or the row is about.</summary>
    public bool Fits(string id, Build build) => new[]
    {
        notes.Find<Test>(id)?.Build,
        notes.Find<Finding>(id)?.Build,
        notes.Find<Finding>(notes.Find<Test>(id)?.Reveals)?.Build,
        notes.Find<Reset>(id)?.Build,
        MendOf(id)?.Build,
    }.All(condition => condition?.Fits(build) ?? true);

    /// <summary>How a job ends that takes this step; null for every other step.</summary>
    public static Ending? EndingOf(string id) => id switch
    {
        AlwaysThere.HandOver => Ending.HandedOver,
        AlwaysThere.Park or AlwaysThere.PartOut or AlwaysThere.Exchange => Ending.NotWorthIt,
        AlwaysThere.HandBack => Ending.NothingWrong,
        AlwaysThere.WorkAround => Ending.WorkedAround,
        _ => null,
    };

    private Asked OfFinding(NextBestStep step, string finding) =>
        new(step.Id, finding, step.Name, [.. (notes.Find<Finding>(finding)?.Values ?? []).Select(v => new Choice(v.Id, v.Name))]);
}
