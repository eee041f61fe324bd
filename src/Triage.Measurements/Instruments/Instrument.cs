using System.Collections.Immutable;
using Triage.Measurements.Readings;

namespace Triage.Measurements.Instruments;

/// <summary>A meter or tester, set up once for a bench.</summary>
/// <param name="Name">As the bench calls it.</param>
/// <param name="Ranges">Its accuracy table.</param>
public sealed record Instrument(string Name, ImmutableArray<InstrumentRange> Ranges)
{
    /// <summary>What it loads a voltage with, in ohms; 10 MΩ on nearly every digital meter (common practice, no source).</summary>
    public double InputOhms { get; init; } = 10e6;

    /// <summary>"multimeter", "component tester"; null when not said.</summary>
    public string? Kind { get; init; }

    /// <summary>What it drops in a current's way at full scale, in volts; null when its sheet was not read for it.</summary>
    public double? BurdenVolts { get; init; }

    /// <summary>Modes that it is known not to have.</summary>
    public ImmutableArray<ReadingMode> Cannot { get; init; } = [];

    /// <summary>A cheap 2000-count meter with a component tester beside it, for a bench that has set up none (common practice, no source).</summary>
    public static Instrument Ordinary { get; } = new(
        "ordinary meter",
        [
            .. Decades(ReadingMode.Resistance, 200, 2e7, 1, 5),
            .. Decades(ReadingMode.Continuity, 200, 200, 2, 5),
            .. Decades(ReadingMode.SeriesResistance, 2, 200, 5, 5),
            .. Decades(ReadingMode.DiodeDrop, 2, 2, 2, 5),
            .. Decades(ReadingMode.DcVolts, 0.2, 2000, 1, 3),
            .. Decades(ReadingMode.AcVolts, 2, 2000, 1.5, 5),
            .. Decades(ReadingMode.DcCurrent, 2e-3, 20, 2, 5),
            .. Decades(ReadingMode.AcCurrent, 2e-3, 20, 2.5, 5),
            .. Decades(ReadingMode.Capacitance, 2e-9, 0.2, 4, 5),
            .. Decades(ReadingMode.Inductance, 2e-3, 20, 5, 5),
            .. Decades(ReadingMode.Frequency, 20, 2e7, 0.5, 2),
            .. Decades(ReadingMode.Temperature, 200, 2000, 2, 3),
        ]);

    /// <summary>± in the mode's unit at a reading; null when no range reaches so far.</summary>
    public double? Accuracy(ReadingMode mode, double reading) => RangeFor(mode, reading)?.Accuracy(reading);

    /// <summary>The smallest range that shows the value; null when none does.</summary>
    public InstrumentRange? RangeFor(ReadingMode mode, double value) =>
        Of(mode).Where(r => r.FullScale >= Math.Abs(value)).MinBy(r => r.FullScale);

    /// <summary>The largest range of a mode; null when the instrument has none.</summary>
    public InstrumentRange? Largest(ReadingMode mode) => Of(mode).MaxBy(r => r.FullScale);

    /// <summary>The smallest step it shows in a mode; null when it has none.</summary>
    public double? Finest(ReadingMode mode) => Of(mode).MinBy(r => r.Resolution)?.Resolution;

    private IEnumerable<InstrumentRange> Of(ReadingMode mode) => Ranges.Where(r => r.Mode == mode);

    /// <summary>
    /// The instrument after a try on a known-good part: the range used errs no more than the part is known plus one count, where that is
    /// less than its data sheet grants (common practice, no source). A reading that the part and the data sheet cannot explain together
    /// gives a problem and leaves the instrument as it was.
    /// </summary>
    /// <param name="mode">The mode tried.</param>
    /// <param name="known">Where the part's value is known to lie.</param>
    /// <param name="shown">What the instrument showed, in the unit of the mode.</param>
    public (Instrument Instrument, MeasurementProblem? Problem) TriedOn(ReadingMode mode, ExpectedRange known, double shown)
    {
        if (RangeFor(mode, shown) is not { } range || shown < known.Low - range.Accuracy(shown) || shown > known.High + range.Accuracy(shown))
        {
            return (this, MeasurementProblems.InstrumentOff(Name, shown, known.Low, known.High));
        }

        var error = Math.Max(Math.Abs(shown - known.Low), Math.Abs(shown - known.High));
        var narrowed = range with { Percent = shown == 0 ? 0 : error / Math.Abs(shown) * 100, Counts = 1 };
        return narrowed.Accuracy(shown) < range.Accuracy(shown) ? (this with { Ranges = Ranges.Replace(range, narrowed) }, null) : (this, null);
    }

    private static IEnumerable<InstrumentRange> Decades(ReadingMode mode, double least, double most, double percent, double counts)
    {
        for (var scale = least; scale <= most * 1.001; scale *= 10)
        {
            yield return new InstrumentRange(mode, scale, scale / 2000, percent, counts);
        }
    }
}
