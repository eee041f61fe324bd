using System.Collections.Frozen;
using System.Collections.Immutable;

namespace Triage.Measurements.Readings;

/// <summary>The words that notes and people use for what an instrument was set to.</summary>
public static class ReadingModeWords
{
    private static readonly ImmutableArray<(ReadingMode Mode, string Ways)> Table =
    [
        (ReadingMode.Resistance, "ohms|ohm|resistance"),
        (ReadingMode.DiodeDrop, "diode|diode drop|diode range|diode test|junction"),
        (ReadingMode.Continuity, "continuity|beeper|buzzer"),
        (ReadingMode.DcVolts, "dc-volts|volts|voltage|volts dc|dc volts|dc v|v dc|vdc"),
        (ReadingMode.AcVolts, "ac-volts|volts ac|ac volts|ac v|v ac|vac|ripple"),
        (ReadingMode.DcCurrent, "dc-amps|amps|current|amps dc|dc current|current dc|milliamps"),
        (ReadingMode.AcCurrent, "ac-amps|amps ac|ac current|current ac"),
        (ReadingMode.Capacitance, "farads|capacitance|capacity"),
        (ReadingMode.SeriesResistance, "esr|series resistance|equivalent series resistance"),
        (ReadingMode.Inductance, "henries|inductance"),
        (ReadingMode.Frequency, "hertz|frequency"),
        (ReadingMode.Temperature, "celsius|temperature"),
        (ReadingMode.ComponentTester, "tester|component tester"),
    ];

    private static readonly FrozenDictionary<string, ReadingMode> ByWord = Table
        .SelectMany(row => row.Ways.Split('|').Select(way => KeyValuePair.Create(Spaced(way), row.Mode)))
        .ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);

    /// <summary>The word for each mode, as notes write it.</summary>
    public static ImmutableArray<string> All { get; } = [.. Table.Select(row => row.Ways.Split('|')[0])];

    /// <summary>Null when the words name no mode.</summary>
    public static ReadingMode? Find(string words) => ByWord.TryGetValue(Spaced(words.Trim()), out var mode) ? mode : null;

    /// <summary>As notes write it: "ohms", "dc-volts".</summary>
    public static string Of(ReadingMode mode) => Table.First(row => row.Mode == mode).Ways.Split('|')[0];

    /// <summary>Notes and forms write a hyphen where people write a space.</summary>
    private static string Spaced(string words) => words.Replace('-', ' ');
}
