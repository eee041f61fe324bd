using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>Pairs of values counted in arrays, for fitting; causes and values by number.</summary>
internal sealed class PairTable
{
    readonly Dictionary<CheckedFinding, int> numbers = [];
    readonly List<int> findingOf = [];
    readonly double[]?[][] rows;
    readonly double[]?[][] checks;

    internal PairTable(ImmutableArray<string> causes, IReadOnlyList<SoleCause> cases, ImmutableArray<string> parents)
    {
        var findings = new Dictionary<string, int>();
        foreach (CheckedFinding value in cases.SelectMany(one => one.Seen))
            if (numbers.TryAdd(value, numbers.Count))
            {
                findings.TryAdd(value.Finding, findings.Count);
                findingOf.Add(findings[value.Finding]);
            }
        rows = [.. causes.Select(_ => new double[]?[numbers.Count])];
        checks = [.. causes.Select(_ => new double[]?[numbers.Count])];
        foreach (SoleCause one in cases) Add(one, causes.IndexOf(one.Fault), parents, findings.Count);
    }

    /// <summary>All values met, by number.</summary>
    internal IEnumerable<CheckedFinding> Values => numbers.OrderBy(n => n.Value).Select(n => n.Key);

    internal int[] Of(SoleCause one) => [.. one.Seen.Select(value => numbers[value])];

    /// <summary>How often the cause showed the pair, and how often the second finding was checked beside the first's value, some left out of both.</summary>
    internal (double Seen, double Of) Beside(int cause, int parent, int child, double without) => rows[cause][parent] is { } row
        ? (Math.Max(0, row[child] - without), Math.Max(0, checks[cause][parent]![findingOf[child]] - without))
        : (0, 0);

    void Add(SoleCause one, int cause, ImmutableArray<string> parents, int findings)
    {
        foreach (CheckedFinding parent in one.Seen.Where(seen => parents.Contains(seen.Finding)))
        {
            int p = numbers[parent];
            double[] row = rows[cause][p] ??= new double[numbers.Count], check = checks[cause][p] ??= new double[findings];
            foreach (CheckedFinding child in one.Seen)
            {
                row[numbers[child]] += one.Weight;
                check[findingOf[numbers[child]]] += one.Weight;
            }
        }
    }
}
