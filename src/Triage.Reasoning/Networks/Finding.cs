using System.Collections.Immutable;

namespace Triage.Reasoning.Networks;

/// <summary>
/// Something that can be observed, with values 0 … v. Ordered values run from normal (0) to worst and follow noisy-MAX
/// (Henrion 1989, Díez 1993); nominal ones have no order: with no linked cause present they follow
/// <see cref="Ambient"/>, with one its own distribution, with several the mean of theirs.
/// A direct measurement on one part is a nominal finding linked to that root alone.
/// </summary>
/// <param name="Id">Unique among the findings of a network.</param>
/// <param name="Values">Names of the values, at least two.</param>
/// <param name="Ambient">P(value) when no linked cause is present (the leak), one per value, summing to 1.</param>
/// <param name="Links">Several for one (root, state) are several causes, as a state of a compound root has.</param>
public sealed record Finding(string Id, ImmutableArray<string> Values, ImmutableArray<double> Ambient, ImmutableArray<Link> Links)
{
    public bool Nominal { get; init; }

    /// <summary>Effective sample size behind <see cref="Ambient"/>; infinite means exactly known.</summary>
    public double AmbientWeight { get; init; } = double.PositiveInfinity;
}

/// <summary>What one state of one root does to a finding.</summary>
/// <param name="Root">Index of the root.</param>
/// <param name="State">Index of its state, never 0.</param>
/// <param name="Produces">
/// Ordered findings: P(value that this cause by itself produces), without the leak: the cumulative of it is C of the noisy-MAX.
/// Nominal findings: P(value | this cause is the only one). One per value, summing to 1.
/// </param>
public sealed record Link(int Root, int State, ImmutableArray<double> Produces)
{
    /// <summary>Effective sample size behind <see cref="Produces"/>; infinite means exactly known.</summary>
    public double Weight { get; init; } = double.PositiveInfinity;

    /// <summary>The conditions under which the cause shows; none named means always.</summary>
    public Conditions When { get; init; }

    /// <summary>Mean minutes between two appearances of something that comes and goes; null when it is there all the time.</summary>
    public double? EveryMinutes { get; init; }
}

/// <summary>Circumstances in which a finding was looked for, or in which a cause shows.</summary>
[Flags]
public enum Conditions
{
    None = 0,
    Cold = 1,
    Warm = 2,
    Flexed = 4,
    Tapped = 8,
    OnLoad = 16,
    AfterPowerLoss = 32,
}
