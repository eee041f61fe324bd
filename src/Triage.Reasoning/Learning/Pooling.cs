using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>
/// How strongly each step of a hierarchy leans on the step above it, in pseudo-jobs (the κ of a Dirichlet–multinomial).
/// Steps between levels run from the most general level (device class) to the most special (device); deeper ones use the last entry.
/// </summary>
public sealed record Pooling
{
    /// <summary>Most that a note's share of causes may weigh.</summary>
    public double ShareNotes { get; init; } = 32;

    /// <summary>Shares at a level on shares one level up.</summary>
    public ImmutableArray<double> ShareLevels { get; init; } = [8, 8];

    /// <summary>Most that a note's link may weigh.</summary>
    public double LinkNotes { get; init; } = 32;

    /// <summary>A link that only jobs made, on the ambient distribution.</summary>
    public double LinkUnnoted { get; init; } = 4;

    /// <summary>Links of a fault on those of its group.</summary>
    public double LinkGroup { get; init; } = 8;

    /// <summary>Links at a level on links one level up.</summary>
    public ImmutableArray<double> LinkLevels { get; init; } = [8, 8];

    /// <summary>Most that a note's ambient frequency may weigh.</summary>
    public double Ambient { get; init; } = 32;

    internal static double At(IReadOnlyList<double> steps, int depth) => steps[Math.Min(depth, steps.Count - 1)];
}
