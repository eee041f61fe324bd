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

    /// <summary>The rows that a question, look or reading is answered by; none for what is done rather than looked at.</summary>
    public ImmutableArray<Asked> RowsOf(string id, string name) => (notes.Find<Test>(id), notes.Find<Finding>(id)) switch
    {
        ({ Reveals: { } finding }, _) => [OfFinding(id, notes.Today(finding), name)],
        ({ } measured, _) => [new(id, null, name, [.. measured.Outcomes.Select(o => new Choice(o.Id, o.Name))])],
        (_, { } finding) => [OfFinding(id, finding.Id, name)],
        _ when id == AlwaysThere.AskConsent => [new(id, null, name, [new(Agreed, "agreed, or saved"), new(HasToStay, "it has to stay")])],
        _ => [],
    };

    /// <summary>Null for what no note describes.</summary>
    public Effort? EffortOf(string id) =>
        notes.Find<Test>(id)?.Effort ?? notes.Find<Reset>(id)?.Effort ?? MendOf(id)?.Effort;

    public Mend? MendOf(string id) =>
        scope.Faults.SelectMany(f => f.Mends).FirstOrDefault(m => m.Id == id && m.Name is not null)
        ?? notes.Of<Fault>().SelectMany(f => f.Mends).FirstOrDefault(m => m.Id == id && m.Name is not null);

    /// <summary>Access steps that lead to it, outermost first, but for those that are open.</summary>
    public ImmutableArray<AccessStep> OpensFor(string id, ImmutableArray<string> open)
    {
        var way = new Stack<AccessStep>();
        for (var step = EffortOf(id) is { } effort ? scope.Behind(effort) : null; step is not null && !open.Contains(step) && scope.Access.FirstOrDefault(a => a.Id == step) is { } access; step = access.Behind)
            way.Push(access);
        return [.. way];
    }

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
        AlwaysThere.Park or AlwaysThere.PartOut => Ending.NotWorthIt,
        AlwaysThere.HandBack => Ending.NothingWrong,
        AlwaysThere.WorkAround => Ending.WorkedAround,
        _ => null,
    };

    private Asked OfFinding(string id, string finding, string name) =>
        new(id, finding, name, [.. (notes.Find<Finding>(finding)?.Values ?? []).Select(v => new Choice(v.Id, v.Name))]);
}
