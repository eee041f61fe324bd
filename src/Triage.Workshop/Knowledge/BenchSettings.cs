using System.Collections.Immutable;
using Triage.Measurements.Instruments;
using Triage.Reasoning.Planning;
using Triage.Workshop.Stock;

namespace Triage.Workshop.Knowledge;

/// <summary>What the bench says of itself: rates, tools, currency. Read from <c>bench.yaml</c> in the first book.</summary>
public sealed record BenchSettings
{
    /// <summary>Currency per hour of bench time (common practice, no source: a hobbyist's hour).</summary>
    public double ValueOfHour { get; init; } = 12;

    /// <summary>Currency per day that a machine waits.</summary>
    public double CostOfDay { get; init; } = 0.5;

    public string Currency { get; init; } = "¤";

    /// <summary>Worth of a working machine when a job does not say.</summary>
    public double UsualWorth { get; init; } = 80;

    /// <summary>What somebody licensed asks for a repair, in the bench's currency (common practice, no source).</summary>
    public double HandOverPrice { get; init; } = 50;

    /// <summary>Least minutes with hands on of any step: reading it, writing it down; a round pays it once (common practice, no source).</summary>
    public double HandlingMinutes { get; init; } = 1;

    /// <summary>What asking the owner costs once the machine stands on the bench.</summary>
    public OwnerCall OwnerCall { get; init; } = new();

    /// <summary>
    /// Currency per hour that a machine waits on the bench while nobody works on it, at most a working day; from there on it lies on the shelf
    /// at <see cref="CostOfDay"/>.
    /// </summary>
    public double WaitingHour { get; init; } = 1;

    /// <summary>Tools at hand; null when nobody listed them, and then everything counts as there.</summary>
    public ImmutableArray<string>? Tools { get; init; }

    /// <summary>Meters and testers as set up once; none: an ordinary one is assumed.</summary>
    public ImmutableArray<Instrument> Instruments { get; init; } = [];

    /// <summary>Parts on hand.</summary>
    public ImmutableArray<StockItem> Drawer { get; init; } = [];

    public Rates Rates => new(ValueOfHour, CostOfDay) { HandlingMinutes = HandlingMinutes, WaitingHour = WaitingHour };
}

/// <summary>One call to the owner: the bench's minutes, and the days until an answer comes (common practice, no source).</summary>
public sealed record OwnerCall(double Minutes = 10, double Days = 1);
