using System.Collections.Frozen;

namespace Triage.Measurements.Quantities;

/// <summary>Unit symbols and the spellings people use for them; prefixes and which of them a bench meets before which unit.</summary>
public static class UnitSymbols
{
    /// <summary>Where case decides (h is hour, H is henry; s is second), the spelling is listed here.</summary>
    private static readonly FrozenDictionary<string, (Unit Unit, double Factor)> Exact = new Dictionary<string, (Unit, double)>
    {
        ["Ω"] = (Unit.Ohm, 1), ["\u2126"] = (Unit.Ohm, 1), ["R"] = (Unit.Ohm, 1), ["F"] = (Unit.Farad, 1), ["f"] = (Unit.Farad, 1),
        ["H"] = (Unit.Henry, 1), ["s"] = (Unit.Second, 1), ["h"] = (Unit.Second, 3600), ["C"] = (Unit.DegreeCelsius, 1),
    }.ToFrozenDictionary();

    private static readonly FrozenDictionary<string, (Unit Unit, double Factor)> AnyCase = new Dictionary<string, (Unit, double)>
    {
        ["ohm"] = (Unit.Ohm, 1), ["ohms"] = (Unit.Ohm, 1), ["farad"] = (Unit.Farad, 1), ["henry"] = (Unit.Henry, 1),
        ["v"] = (Unit.Volt, 1), ["volt"] = (Unit.Volt, 1), ["volts"] = (Unit.Volt, 1), ["vdc"] = (Unit.Volt, 1), ["vac"] = (Unit.Volt, 1),
        ["a"] = (Unit.Ampere, 1), ["amp"] = (Unit.Ampere, 1), ["amps"] = (Unit.Ampere, 1), ["adc"] = (Unit.Ampere, 1), ["aac"] = (Unit.Ampere, 1),
        ["w"] = (Unit.Watt, 1), ["watt"] = (Unit.Watt, 1), ["hz"] = (Unit.Hertz, 1),
        ["sec"] = (Unit.Second, 1), ["seconds"] = (Unit.Second, 1), ["min"] = (Unit.Second, 60), ["minutes"] = (Unit.Second, 60),
        ["°c"] = (Unit.DegreeCelsius, 1), ["degc"] = (Unit.DegreeCelsius, 1), ["%"] = (Unit.Percent, 1), ["percent"] = (Unit.Percent, 1),
        ["db"] = (Unit.Decibel, 1),
    }.ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);

    private static readonly FrozenDictionary<char, int> Prefixes = new Dictionary<char, int>
    {
        ['p'] = -12, ['n'] = -9, ['\u00B5'] = -6, ['\u03BC'] = -6, ['u'] = -6, ['m'] = -3, ['k'] = 3, ['K'] = 3, ['M'] = 6, ['G'] = 9,
    }.ToFrozenDictionary();

    /// <summary>The symbol to print: "Ω", "F", "°C"; empty for a plain number.</summary>
    public static string Symbol(Unit unit) => unit switch
    {
        Unit.Number => "",
        Unit.Ohm => "Ω",
        Unit.Farad => "F",
        Unit.Henry => "H",
        Unit.Volt => "V",
        Unit.Ampere => "A",
        Unit.Watt => "W",
        Unit.Hertz => "Hz",
        Unit.Second => "s",
        Unit.DegreeCelsius => "°C",
        Unit.Percent => "%",
        Unit.Decibel => "dB",
        Unit.Metre => "m",
    };

    internal static string Prefix(int exponent) => exponent switch
    {
        -12 => "p",
        -9 => "n",
        -6 => "\u00B5",
        -3 => "m",
        3 => "k",
        6 => "M",
        9 => "G",
        _ => "",
    };

    internal static bool IsPrefix(char letter, out int exponent) => Prefixes.TryGetValue(letter, out exponent);

    internal static bool IsUnit(string spelling, out Unit unit, out double factor)
    {
        var known = Exact.TryGetValue(spelling, out var found) || AnyCase.TryGetValue(spelling, out found);
        (unit, factor) = found;
        return known;
    }

    /// <summary>Smallest and largest power of ten a bench meets before the unit: nobody measures megafarads, so "47 MF" is a slip.</summary>
    internal static (int Least, int Most) PrefixSpan(Unit unit) => unit switch
    {
        Unit.Ohm => (-6, 9),
        Unit.Farad => (-12, 0),
        Unit.Henry => (-9, 0),
        Unit.Volt or Unit.Watt => (-6, 3),
        Unit.Ampere => (-12, 3),
        Unit.Hertz => (0, 9),
        Unit.Second => (-12, 0),
        Unit.Metre => (-3, -3),
        Unit.Number => (0, 6),
        Unit.DegreeCelsius or Unit.Percent or Unit.Decibel => (0, 0),
    };

    /// <summary>As a sentence names it.</summary>
    internal static string Name(Unit unit) => unit is Unit.Number ? "a plain number" : Symbol(unit);
}
