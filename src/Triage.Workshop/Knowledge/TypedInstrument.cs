using System.Collections.Immutable;
using Triage.Measurements.Instruments;
using Triage.Measurements.Quantities;
using Triage.Measurements.Readings;

namespace Triage.Workshop.Knowledge;

/// <summary>An instrument as somebody types it off its sheet; it is read when it is kept.</summary>
/// <param name="Name">As readings name it.</param>
public sealed record TypedInstrument(string Name)
{
    /// <summary>"multimeter"; null when not said.</summary>
    public string? Kind { get; init; }

    /// <summary>What it loads a voltage with: "10 M".</summary>
    public string? Input { get; init; }

    /// <summary>What it drops in a current's way at full scale: "200 mV".</summary>
    public string? Burden { get; init; }

    /// <summary>Modes that it does not have: "esr".</summary>
    public ImmutableArray<string> Cannot { get; init; } = [];

    /// <summary>A line for each range, see <see cref="RangeLine"/>.</summary>
    public ImmutableArray<string> Ranges { get; init; } = [];

    /// <summary>As somebody would have typed it: read again, it is the same instrument.</summary>
    public static TypedInstrument Of(Instrument set) => new(set.Name)
    {
        Kind = set.Kind,
        Input = ValueText.Format(new(set.InputOhms, Unit.Ohm)),
        Burden = set.BurdenVolts is { } burden ? ValueText.Format(new(burden, Unit.Volt)) : null,
        Cannot = [.. set.Cannot.Select(ReadingModeWords.Of)],
        Ranges = [.. set.Ranges.Select(RangeLine.Of)],
    };
}
