namespace Triage.Measurements.Quantities;

/// <summary>What a number counts, always in the unit without prefix.</summary>
public enum Unit
{
    /// <summary>A plain number: gain, turns, a count.</summary>
    Number,
    Ohm,
    Farad,
    Henry,
    Volt,
    Ampere,
    Watt,
    Hertz,
    Second,
    DegreeCelsius,
    Percent,
    Decibel,
    Metre,
}
