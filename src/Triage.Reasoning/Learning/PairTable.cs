using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>Pairs of values counted in arrays, for fitting; causes by index, values by the number that the notes give them.</summary>
internal sealed class PairTable
{
    readonly KnowledgeIndex known;
    readonly double[]?[][] rows;
    readonly double[][] alone;

    internal PairTable(KnowledgeIndex known, ImmutableArray<string> causes, IReadOnlyList<SoleCause> cases, ImmutableArray<string> parents)
    {
        this.known = known;
        rows = [.. causes.Select(_ => new double[]?[known.Values])];
        alone = [.. causes.Select(_ => new double[known.Values])];
        foreach (SoleCause one in cases)
        {
            foreach (CheckedFinding seen in one.Seen) alone[causes.IndexOf(one.Fault)][known.Number(seen)!.Value] += one.Weight;
            foreach (CheckedFinding parent in one.Seen.Where(seen => parents.Contains(seen.Finding)))
            {
                double[] row = rows[causes.IndexOf(one.Fault)][known.Number(parent)!.Value] ??= new double[known.Values];
                foreach (CheckedFinding child in one.Seen) row[known.Number(child)!.Value] += one.Weight;
            }
        }
    }

    /// <summary>How often the cause showed each value of a finding, some jobs that showed one of them left out.</summary>
    internal double[] Alone(int cause, CheckedFinding child, double without) => Values(alone[cause], child, without);

    /// <summary>How often each value of a finding was seen beside the parent's, some jobs that showed one of them left out.</summary>
    internal double[] Beside(int cause, CheckedFinding parent, CheckedFinding child, double without) =>
        Values(rows[cause][known.Number(parent)!.Value] ?? [], child, without);

    double[] Values(double[] row, CheckedFinding child, double without)
    {
        KnownFinding finding = known.NeededFinding(child.Finding);
        int own = finding.Values.IndexOf(child.Value);
        var seen = new double[finding.Values.Length];
        if (row.Length == 0) return seen;
        Array.Copy(row, known.Number(child)!.Value - own, seen, 0, seen.Length);
        if (without > 0) seen[own] = Math.Max(0, seen[own] - without);
        return seen;
    }
}
