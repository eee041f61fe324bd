using Triage.Notes.Kinds;

namespace Triage.Notes.Linting;

/// <summary>The likelier half of a class's faults each need a check that goes straight at them, with the part in its place; a reset that clears it is one.</summary>
internal static class DirectChecks
{
    public static IEnumerable<Remark> Missing(ClassKnowledge known)
    {
        var byShare = known.Faults.Where(f => f.Share is not null).OrderByDescending(f => f.Share!.Probability).ToList();
        return from fault in byShare.Take((byShare.Count + 1) / 2)
               where !known.Tests.Any(t => GoesAt(t, fault)) && !known.Resets.Any(r => r.Clears.Any(c => c.Fault == fault.Id))
               select new Remark(fault, null, KnowledgeProblems.NoDirectCheck(fault.Id, known.Class.Id));
    }

    private static bool GoesAt(Test test, Fault fault) =>
        test.Decides == fault.Id
        || (test.InPlace && ClassKnowledge.Measures(test, fault))
        || fault.Shows.Any(s => test.Revealed.Contains(s.Finding) && s.Chance.Probability >= FrequencyWords.Table["usually"]);
}
