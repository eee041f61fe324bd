using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>P(value | cause) as learned, by cause and number of the value.</summary>
internal sealed class LinksOfCauses
{
    // a value that no job and no note has is rare, not impossible
    const double Rarest = 1e-6;

    readonly Distribution[][] links;

    internal LinksOfCauses(Learned learned, ImmutableArray<string> faults, ImmutableArray<KnownFinding> findings, ImmutableArray<string> levels)
    {
        links = [.. faults.Select(fault => findings.Select(finding => learned.Seen(fault, finding.Id, levels) ?? learned.Ambient(finding.Id)).ToArray())];
        Chances = [.. links.Select(row => row.SelectMany(link => link.Mean).Select(p => Math.Max(Rarest, p)).ToArray())];
    }

    internal double[][] Chances { get; }

    /// <summary>The same as if only the jobs outside had been counted: a Dirichlet gives back what it was given.</summary>
    internal double[][] Without(ValueNumbers numbers, JointCounts all, JointCounts outside) => [.. links.Select((row, c) =>
    {
        double[] counted = all.Alone(c);
        double[] held = [.. counted.Zip(outside.Alone(c), (a, o) => a - o)];
        double[] allOf = numbers.ByFinding(counted), heldOf = numbers.ByFinding(held);
        return Chances[c].Select((p, value) =>
        {
            int finding = numbers.FindingOf[value];
            double weight = Math.Max(row[finding].Weight, allOf[finding] + 0.1);
            return double.IsInfinity(weight) ? p : Math.Max(Rarest, (p * weight - held[value]) / (weight - heldOf[finding]));
        }).ToArray();
    })];
}
