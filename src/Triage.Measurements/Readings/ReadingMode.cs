using Triage.Measurements.Quantities;

namespace Triage.Measurements.Readings;

/// <summary>What the instrument was set to.</summary>
public enum ReadingMode
{
    Resistance,
    DiodeDrop,
    Continuity,
    DcVolts,
    AcVolts,
    DcCurrent,
    AcCurrent,
    Capacitance,

    /// <summary>Equivalent series resistance of a capacitor.</summary>
    SeriesResistance,
    Inductance,
    Frequency,
    Temperature,

    /// <summary>A component tester, which decides by itself what it shows.</summary>
    ComponentTester,
}

/// <summary>What each mode measures.</summary>
public static class ReadingModes
{
    /// <summary>The unit a mode shows; null for a component tester, which shows any.</summary>
    public static Unit? UnitOf(ReadingMode mode) => mode switch
    {
        ReadingMode.Resistance or ReadingMode.Continuity or ReadingMode.SeriesResistance => Unit.Ohm,
        ReadingMode.DiodeDrop or ReadingMode.DcVolts or ReadingMode.AcVolts => Unit.Volt,
        ReadingMode.DcCurrent or ReadingMode.AcCurrent => Unit.Ampere,
        ReadingMode.Capacitance => Unit.Farad,
        ReadingMode.Inductance => Unit.Henry,
        ReadingMode.Frequency => Unit.Hertz,
        ReadingMode.Temperature => Unit.DegreeCelsius,
        ReadingMode.ComponentTester => null,
    };

    /// <summary>Whether the meter feeds the part itself, so that power or stored charge spoils the reading and can harm the meter.</summary>
    public static bool FeedsThePart(ReadingMode mode) => mode
        is ReadingMode.Resistance or ReadingMode.DiodeDrop or ReadingMode.Continuity or ReadingMode.Capacitance
        or ReadingMode.SeriesResistance or ReadingMode.Inductance or ReadingMode.ComponentTester;

    /// <summary>The usual mode for a value that came without one; null when the unit does not decide.</summary>
    public static ReadingMode? Usual(Unit unit) => unit switch
    {
        Unit.Ohm => ReadingMode.Resistance,
        Unit.Volt => ReadingMode.DcVolts,
        Unit.Ampere => ReadingMode.DcCurrent,
        Unit.Farad => ReadingMode.Capacitance,
        Unit.Henry => ReadingMode.Inductance,
        Unit.Hertz => ReadingMode.Frequency,
        Unit.DegreeCelsius => ReadingMode.Temperature,
        Unit.Number or Unit.Watt or Unit.Second or Unit.Percent or Unit.Decibel or Unit.Metre => null,
    };
}
