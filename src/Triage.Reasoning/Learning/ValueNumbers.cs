using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>The values of all findings, numbered through.</summary>
internal sealed class ValueNumbers
{
    readonly Dictionary<(string Finding, string Value), int> numbers = [];

    internal ValueNumbers(ImmutableArray<KnownFinding> findings)
    {
        foreach (KnownFinding finding in findings)
            foreach (string value in finding.Values) numbers.Add((finding.Id, value), numbers.Count);
        FindingOf = [.. findings.SelectMany((finding, f) => finding.Values.Select(_ => f))];
        Findings = findings.Length;
    }

    internal int Count => numbers.Count;

    internal int Findings { get; }

    /// <summary>Index of the finding that a value belongs to.</summary>
    internal ImmutableArray<int> FindingOf { get; }

    /// <summary>Numbers of the values that are known here, in order.</summary>
    internal int[] Of(IEnumerable<CheckedFinding> seen) =>
        [.. seen.Select(s => numbers.GetValueOrDefault((s.Finding, s.Value), -1)).Where(value => value >= 0).Order()];

    internal int Of(string finding, string value) => numbers[(finding, value)];

    /// <summary>Sums of one number per value, one per finding.</summary>
    internal double[] ByFinding(double[] perValue)
    {
        var sums = new double[Findings];
        for (int v = 0; v < perValue.Length; v++) sums[FindingOf[v]] += perValue[v];
        return sums;
    }
}
