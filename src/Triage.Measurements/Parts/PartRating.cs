using Triage.Measurements.Quantities;

namespace Triage.Measurements.Parts;

/// <summary>What a part is rated for, as far as its marking, a note or a catalogue says; null means not said.</summary>
public sealed record PartRating
{
    /// <summary>Resistance, capacitance or inductance.</summary>
    public Quantity? Value { get; init; }

    /// <summary>Symmetrical tolerance in percent.</summary>
    public double? TolerancePercent { get; init; }

    public double? Volts { get; init; }

    public double? Amperes { get; init; }

    public double? Watts { get; init; }

    public double? MaxCelsius { get; init; }

    /// <summary>Equivalent series resistance in ohms.</summary>
    public double? SeriesOhms { get; init; }

    /// <summary>Resistance that a rated voltage comes through, in ohms: what a meter's own resistance divides it with.</summary>
    public double? SourceOhms { get; init; }

    public FuseSpeed? Speed { get; init; }

    /// <summary>Interrupting capacity of a fuse in amperes.</summary>
    public double? BreakingAmperes { get; init; }

    /// <summary>"X1", "X2", "Y1", "Y2" of a safety capacitor (IEC 60384-14).</summary>
    public string? SafetyClass { get; init; }

    public double? LeadPitchMillimetres { get; init; }

    public double? DiameterMillimetres { get; init; }

    public double? HeightMillimetres { get; init; }

    /// <summary>What had to be assumed in reading it, in words; null when nothing had.</summary>
    public string? Assumed { get; init; }
}
