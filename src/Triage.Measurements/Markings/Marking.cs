using Triage.Measurements.Quantities;

namespace Triage.Measurements.Markings;

/// <summary>What a code on a part means.</summary>
/// <param name="Value">The coded value.</param>
/// <param name="Tolerance">Null when the code says none.</param>
public sealed record Marking(Quantity Value, Tolerance? Tolerance)
{
    /// <summary>Temperature coefficient in 10⁻⁶/K, from a sixth band.</summary>
    public double? PerMillionPerKelvin { get; init; }
}

/// <summary>A decoded marking, or what is wrong with it; exactly one of the two.</summary>
public sealed record MarkingResult(Marking? Marking, MeasurementProblem? Problem);
