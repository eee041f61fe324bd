using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>P(value | only this cause), one per value of a finding, never 0: what no job and no note has is rare, not impossible.</summary>
internal static class SeenAlone
{
    const double Rarest = 1e-6;

    internal static Distribution Of(Estimates estimates, string fault, string finding, ImmutableArray<string> levels) =>
        estimates.Seen(fault, finding, levels) ?? estimates.Ambient(finding);

    internal static double[] Chances(Distribution link) => [.. link.Mean.Select(p => Math.Max(Rarest, p))];

    /// <summary>As if jobs of this weight that showed the value had not been counted: a Dirichlet gives back what it was given.</summary>
    internal static double[] Without(Distribution link, int value, double jobs) => double.IsPositiveInfinity(link.Weight) || link.Weight <= jobs
        ? Chances(link)
        : [.. link.Mean.Select((p, v) => Math.Max(Rarest, (p * link.Weight - (v == value ? jobs : 0)) / (link.Weight - jobs)))];
}
