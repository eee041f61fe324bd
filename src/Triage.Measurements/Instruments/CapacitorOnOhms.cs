using Triage.Measurements.Quantities;

namespace Triage.Measurements.Instruments;

/// <summary>
/// A capacitor on an ohm range. The meter feeds a current I, the voltage climbs by I/C volts per second, and as the meter shows U/I the
/// display climbs by 1/C ohms per second, whatever the current: 10 Ω/s for an ideal 0.1 F. The limits below are common practice, no source.
/// </summary>
public static class CapacitorOnOhms
{
    /// <summary>Seconds between the first and the second look.</summary>
    public const double Wait = 30;

    private const double LowOhms = 20;

    /// <summary>A capacitor that climbs past this range before the eye can follow tells nothing.</summary>
    private const double EyeSeconds = 1;

    /// <summary>Volts per second across an ideal capacitor fed with a current: I/C.</summary>
    public static double VoltsPerSecond(double amperes, double farads) => amperes / farads;

    /// <summary>Ohms per second on the display: 1/C.</summary>
    public static double OhmsPerSecond(double farads) => 1 / farads;

    /// <summary>Judges three looks on a drained capacitor; values are in ohms or over range.</summary>
    /// <param name="start">At once.</param>
    /// <param name="after30s">After <see cref="Wait"/> seconds.</param>
    /// <param name="reversed">With the leads reversed, at once.</param>
    /// <param name="farads">Rated capacitance; null when not known.</param>
    /// <param name="oneLegLifted">False in circuit, where something else may lie in parallel.</param>
    /// <param name="fullScale">Largest resistance the meter shows, in ohms.</param>
    public static CapacitorVerdict Judge(
        MeasuredValue start, MeasuredValue after30s, MeasuredValue reversed, double? farads, bool oneLegLifted, double fullScale = 2e7)
    {
        MeasuredValue[] looks = [start, after30s, reversed];
        if (looks.Any(l => l.Kind is MeasuredKind.None or MeasuredKind.UnknownPart || (l.Quantity is { } q && (q.Unit is not Unit.Ohm || !double.IsFinite(q.Value)))))
        {
            return new(CapacitorBehaviour.CannotTell, "all three looks must be in ohms or over range", "drain it, check with the voltage range, and take the three looks again");
        }

        double[] ohms = [.. looks.Select(l => l.Kind is MeasuredKind.OverRange ? double.PositiveInfinity : l.Quantity!.Value.Value)];
        return Judge(ohms[0], ohms[1], ohms[2], farads, oneLegLifted, fullScale);
    }

    private static CapacitorVerdict Judge(double start, double later, double reversed, double? farads, bool lifted, double fullScale)
    {
        var climb = farads is { } c ? Wait * OhmsPerSecond(c) : (double?)null;
        if (start < 0 || later < 0 || reversed < 0 || later < start / 2)
        {
            return new(
                CapacitorBehaviour.Charged, "it shows less than nothing or falls: a residual charge lies",
                "drain it through a resistor, check with the voltage range, then take the three looks again");
        }

        if (double.IsInfinity(start))
        {
            return OverRangeAtOnce(farads, fullScale, double.IsInfinity(later) && double.IsInfinity(reversed));
        }

        var flat = later - start < Math.Max(1, (climb ?? 0) / 10);
        if (flat && Math.Max(Math.Max(start, later), reversed) <= LowOhms)
        {
            return Shorted(lifted);
        }

        return climb is { } due && later - start >= Math.Min(due, fullScale) / 3 || climb is null && later > 2 * start + 1
            ? new(CapacitorBehaviour.TakesCharge, "it climbs as a capacitor that takes charge does", "measure capacitance and series resistance: taking charge says nothing of either")
            : new(
                CapacitorBehaviour.Leaky, "it settles at a resistance instead of climbing",
                lifted ? "compare with a new part of the same rating" : "something in parallel may do the same: with power off and drained, lift one leg and repeat");
    }

    private static CapacitorVerdict Shorted(bool lifted) => lifted
        ? new(CapacitorBehaviour.Shorted, "flat and low all three times with one leg lifted", "replace it, and look for what the short overloaded; a superb series resistance is no excuse: a short shows one")
        : new(CapacitorBehaviour.Shorted, "flat and low all three times", "something in parallel may do the same: with power off and drained, lift one leg and repeat");

    private static CapacitorVerdict OverRangeAtOnce(double? farads, double fullScale, bool always)
    {
        var followable = farads is { } c && fullScale / OhmsPerSecond(c) > EyeSeconds;
        return followable && always
            ? new(CapacitorBehaviour.Open, "over range at once, where this capacitance climbs for seconds", "check the leads on a known-good part, then measure its capacitance")
            : new(CapacitorBehaviour.CannotTell, "over range at once: too small a capacitance for this test, or one not known", "measure its capacitance instead");
    }
}
