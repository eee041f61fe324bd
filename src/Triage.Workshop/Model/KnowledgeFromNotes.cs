using Triage.Notes.Kinds;
using Triage.Reasoning.Learning;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Model;

/// <summary>What the learner starts from: the notes' own numbers, before any job is counted.</summary>
internal static class KnowledgeFromNotes
{
    /// <summary>A fault whose note names no share (common practice, no source).</summary>
    private static readonly Chance ShareUnsaid = new(0.02, 1);

    /// <summary>Machines brought in with nothing wrong, beyond the faults that notes mark so (common practice, no source).</summary>
    private static readonly KnownFault NothingWrong = new(SpecialFaults.NothingWrong, null, 0.03, 2) { Apart = true };

    public static Triage.Reasoning.Learning.Knowledge Of(Notebook notes)
    {
        var findings = notes.Of<Finding>().ToDictionary(f => f.Id, StringComparer.Ordinal);
        return new()
        {
            Faults = [.. notes.Of<Fault>().Select(f => KnownFault(f, findings, notes)), NothingWrong],
            Findings = [.. findings.Values.OrderBy(f => f.Id, StringComparer.Ordinal).Select(KnownFinding)],
            Actions = [.. Resets(notes), .. Fixes(notes)],
            Scopes = ScopesFromNotes.Of(notes),
        };
    }

    private static KnownFinding KnownFinding(Finding finding)
    {
        var (ambient, weight) = finding.Ambient();
        return new(finding.Id, [.. finding.Values.Select(v => v.Id)], finding.Nominal, ambient, weight);
    }

    private static KnownFault KnownFault(Fault fault, Dictionary<string, Finding> findings, Notebook notes)
    {
        var share = fault.Share ?? ShareUnsaid;
        var group = fault.Part is not null && fault.Mode is not null ? $"{fault.Part}/{fault.Mode}" : null;
        return new(fault.Id, group, share.Probability, share.Weight)
        {
            Shows = [.. fault.Shows.Select(s => notes.Today(s.Finding)).Distinct()
                .Where(findings.ContainsKey)
                .Select(id => (Id: id, Link: LinkOfNotes.Of(fault, findings[id], findings[id].Ambient().Ambient, notes.Today)!))
                .Select(l => new KnownLink(l.Id, l.Link.Produces, l.Link.Weight))],
            LeadsTo = [.. fault.LeadsTo.Select(l => notes.Today(l.Fault))],
        };
    }

    private static IEnumerable<KnownAction> Resets(Notebook notes) =>
        notes.Of<Reset>().Where(r => r.FormOf is null)
            .Select(r => new KnownAction(r.Id, [.. r.Clears.Select(c => new KnownClearing(notes.Today(c.Fault), Estimate(c.Works), Estimate(c.Holds)))]));

    private static IEnumerable<KnownAction> Fixes(Notebook notes) =>
        from fault in notes.Of<Fault>()
        from mend in fault.Mends
        group (fault.Id, mend.Works) by mend.Id into covered
        select new KnownAction(covered.Key, [.. covered.Select(c => new KnownClearing(c.Id, Estimate(c.Works), new Estimate(1, double.PositiveInfinity)))]);

    private static Estimate Estimate(Chance chance) => new(chance.Probability, chance.Weight);
}
