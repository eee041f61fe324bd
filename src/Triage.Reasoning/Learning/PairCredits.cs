using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>Which findings were seen together: each parent's value beside every other value of a job with one sure, listed cause.</summary>
internal static class PairCredits
{
    internal static IEnumerable<Credit> Of(JobRecord job, ImmutableArray<string> parents, KnowledgeIndex known)
    {
        if (parents.IsEmpty || !IsSole(job, known)) yield break;
        CheckedFinding[] seen = Known(job, known);
        foreach (CheckedFinding parent in seen.Where(s => parents.Contains(s.Finding)))
            foreach (CheckedFinding child in seen.Where(s => s.Finding != parent.Finding))
                yield return new(Key(job.Causes[0].Fault, parent, child), job.Weight);
    }

    internal static bool IsSole(JobRecord job, KnowledgeIndex known) =>
        job.Weight > 0 && job.Causes is [{ Chance: 1, WasNew: false } cause] && known.Fault(cause.Fault) is not null;

    internal static CheckedFinding[] Known(JobRecord job, KnowledgeIndex known) =>
        [.. job.Checked.Where(s => known.Number(s) is not null)];

    internal static TallyKey Key(string fault, CheckedFinding parent, CheckedFinding child) =>
        new(Sum.Pair, $"{parent.Finding}={parent.Value}", fault, child.Finding, child.Value);
}
