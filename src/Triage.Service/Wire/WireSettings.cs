using System.Collections.Immutable;
using Triage.Workshop;
using Triage.Workshop.Knowledge;
using Triage.Workshop.Steps;

namespace Triage.Service.Wire;

/// <summary>What the bench says of itself. Amounts are in its currency.</summary>
/// <param name="Version">State of the settings, to be given back on changing them.</param>
/// <param name="Writable">False when their book was opened for reading only.</param>
internal sealed record WireSettings(string Version, bool Writable)
{
    public required double ValueOfHour { get; init; }

    public required double CostOfDay { get; init; }

    public required double UsualWorth { get; init; }

    public required double HandOverPrice { get; init; }

    public required string Currency { get; init; }

    /// <summary>Absent when nobody listed them: every tool counts as there.</summary>
    public ImmutableArray<string>? Tools { get; init; }

    public static WireSettings Of(LiveBench bench)
    {
        var now = bench.Current.Settings;
        return new(bench.Setup.Version, bench.Setup.Writable)
        {
            ValueOfHour = now.ValueOfHour,
            CostOfDay = now.CostOfDay,
            UsualWorth = now.UsualWorth,
            HandOverPrice = now.HandOverPrice,
            Currency = now.Currency,
            Tools = now.Tools,
        };
    }
}

/// <summary>What is left out stays as it is.</summary>
/// <param name="Version">Of the settings that were read; left out, whatever holds now is changed.</param>
internal sealed record SettingsBody(string? Version = null)
{
    public double? ValueOfHour { get; init; }

    public double? CostOfDay { get; init; }

    public double? UsualWorth { get; init; }

    public double? HandOverPrice { get; init; }

    public string? Currency { get; init; }

    /// <summary>All tools at hand; an empty list: nobody lists them.</summary>
    public string[]? Tools { get; init; }

    public ChangedSettings AsChanged() => new()
    {
        ValueOfHour = ValueOfHour,
        CostOfDay = CostOfDay,
        UsualWorth = UsualWorth,
        HandOverPrice = HandOverPrice,
        Currency = Currency,
        Tools = Tools is null ? null : [.. Tools],
    };
}

/// <param name="Version">State of the settings, to be given back on changing one.</param>
internal sealed record WireInstruments(string Version, ImmutableArray<WireInstrument> Instruments)
{
    public static WireInstruments Of(LiveBench bench) => new(bench.Setup.Version, [.. bench.Current.Settings.Instruments.Select(i => WireInstrument.Of(TypedInstrument.Of(i)))]);
}

/// <summary>A meter or tester off its sheet.</summary>
/// <param name="Name">As readings name it.</param>
/// <param name="Input">What it loads a voltage with: 10 M.</param>
/// <param name="Burden">What it drops in a current's way at full range: 200 mV.</param>
internal sealed record WireInstrument(string Name, string? Kind, string? Input, string? Burden)
{
    /// <summary>A line a range: dc-volts 20 V, step 10 mV, 0.5 % + 2.</summary>
    public required ImmutableArray<string> Ranges { get; init; }

    /// <summary>Modes that it does not have.</summary>
    public required ImmutableArray<string> Cannot { get; init; }

    public static WireInstrument Of(TypedInstrument typed) => new(typed.Name, typed.Kind, typed.Input, typed.Burden) { Ranges = typed.Ranges, Cannot = typed.Cannot };
}

/// <summary>A new instrument, or one as it is from now on.</summary>
/// <param name="Was">Name it has so far; left out for a new one.</param>
/// <param name="Version">Of the list that was read; left out, whatever holds now is changed.</param>
internal sealed record InstrumentBody(string Name, string? Was = null, string? Version = null)
{
    public string? Kind { get; init; }

    public string? Input { get; init; }

    public string? Burden { get; init; }

    public string[]? Ranges { get; init; }

    public string[]? Cannot { get; init; }

    public TypedInstrument AsTyped() => new((Name ?? "").Trim()) { Kind = Kind, Input = Input, Burden = Burden, Ranges = [.. Ranges ?? []], Cannot = [.. Cannot ?? []] };
}
