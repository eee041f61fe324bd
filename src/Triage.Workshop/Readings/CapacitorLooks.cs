using Triage.Measurements.Instruments;
using Triage.Measurements.Readings;

namespace Triage.Workshop.Readings;

/// <summary>Three looks at a capacitor on an ohm range: at start, after 30 s, leads reversed; together one observation.</summary>
internal static class CapacitorLooks
{
    /// <summary>A second look counts as the late one from here on, in seconds (common practice, no source).</summary>
    private const double Late = 20;

    /// <summary>P(a capacitor behaves as its state says); the rest is spread over the other three (common practice, no source).</summary>
    private const double AsExpected = 0.9;

    /// <summary>P(something in parallel matters in circuit), as for single readings.</summary>
    private const double Parallel = 0.5;

    /// <summary>What lies in parallel can only make a behaviour look like one further down.</summary>
    private static readonly CapacitorBehaviour[] Order = [CapacitorBehaviour.Open, CapacitorBehaviour.TakesCharge, CapacitorBehaviour.Leaky, CapacitorBehaviour.Shorted];

    /// <summary>Null until all three looks are there.</summary>
    /// <param name="looks">Readings of one capacitor in ohms, all in circuit or all with a leg lifted, oldest first.</param>
    public static CapacitorVerdict? Judge(IReadOnlyList<Reading> looks, double? farads, Instrument instrument)
    {
        var start = looks.LastOrDefault(l => !l.LeadsReversed && l.AfterSeconds is null or < Late);
        var late = looks.LastOrDefault(l => !l.LeadsReversed && l.AfterSeconds >= Late);
        var reversed = looks.LastOrDefault(l => l.LeadsReversed);
        if (start is null || late is null || reversed is null)
            return null;
        var fullScale = instrument.Largest(ReadingMode.Resistance)?.FullScale ?? 2e7;
        return CapacitorOnOhms.Judge(start.Value, late.Value, reversed.Value, farads, reversed.OneLegLifted, fullScale);
    }

    /// <summary>Whether the behaviour is one that states can be told apart by.</summary>
    public static bool Tells(CapacitorBehaviour shown) => Order.Contains(shown);

    /// <summary>P(behaviour shown | behaviour of the part itself).</summary>
    public static double Likelihood(CapacitorBehaviour shown, CapacitorBehaviour own, bool oneLegLifted)
    {
        var alone = shown == own ? AsExpected : (1 - AsExpected) / (Order.Length - 1);
        if (oneLegLifted)
            return alone;
        var from = Array.IndexOf(Order, own);
        var bypassed = Array.IndexOf(Order, shown) >= from ? 1.0 / (Order.Length - from) : 0;
        return ((1 - Parallel) * alone) + (Parallel * bypassed);
    }
}
