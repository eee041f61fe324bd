using Triage.Measurements.Quantities;

namespace Triage.Measurements.Parts;

/// <summary>What a part is rated for, as far as its marking or a note says; null means not said.</summary>
public sealed record PartRating
{
    /// <summary>Resistance, capacitance or inductance.</summary>
    public Quantity? Value { get; init; }

    /// <summary>Symmetrical tolerance in percent.</summary>
    public double? TolerancePercent { get; init; }

    public double? Volts { get; init; }

    public double? Amperes { get; init; }

    public double? Watts { get; init; }

    public FuseSpeed? Speed { get; init; }

    /// <summary>What had to be assumed in reading it, in words; null when nothing had.</summary>
    public string? Assumed { get; init; }
}
