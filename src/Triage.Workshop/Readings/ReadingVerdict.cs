using System.Collections.Immutable;
using Triage.Measurements.Instruments;
using Triage.Measurements.Readings;
using Triage.Notes.Kinds;

namespace Triage.Workshop.Readings;

/// <summary>What a reading says of the part it was taken on: a likelihood for each state, and the same in words.</summary>
public sealed record ReadingVerdict
{
    /// <summary>The reading as understood; null when it could not be.</summary>
    public required Reading? Reading { get; init; }

    /// <summary>Designator or role; null when no part was found.</summary>
    public string? Part { get; init; }

    /// <summary>Where a good part reads, and why; null when ranges play no part (three looks at a capacitor) or none is known.</summary>
    public ExpectedRange? Good { get; init; }

    /// <summary>Good first, then the failure modes; empty when nothing can be said.</summary>
    public ImmutableArray<StateVerdict> States { get; init; } = [];

    /// <summary>"12 Ω across C14, power off and drained: flat and low, speaks for shorted (strong)".</summary>
    public required string Words { get; init; }

    /// <summary>Why it is not weighed and what to do; null when it is.</summary>
    public string? NotUsed { get; init; }

    internal MeasuredPart? Measured { get; init; }

    internal PartReading? Row { get; init; }

    /// <summary>Judged from three looks together.</summary>
    internal bool ThreeLooks { get; init; }

    internal double Of(string mode) => (States.FirstOrDefault(s => s.State == mode) ?? States[0]).Likelihood;
}

/// <summary>One state of the part beside the reading.</summary>
/// <param name="State">"good" or the id of the failure mode.</param>
/// <param name="Low">Where a part in that state reads, in the unit of the mode; null without a range.</param>
/// <param name="Likelihood">P(reading | state) over the largest of them: only the ratios mean anything.</param>
public sealed record StateVerdict(string State, string Name, double? Low, double? High, double Likelihood);
