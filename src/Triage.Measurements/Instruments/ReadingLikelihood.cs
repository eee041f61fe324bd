using System.Collections.Immutable;
using Triage.Measurements.Quantities;
using Triage.Measurements.Readings;

namespace Triage.Measurements.Instruments;

/// <summary>
/// How well each state of a part explains a reading.
/// <para>The part's own value is spread evenly over its state's range, the instrument's error evenly over ± accuracy (rectangular,
/// JCGM 100:2008 "GUM" 4.3.7), so the reading follows their convolution, a trapezium, on the axis of <see cref="ReadingScale"/>.
/// Two readings in a hundred are slips (wrong spot, bad contact) and lie anywhere on the axis, so that no state is ever ruled out
/// (common practice, no source). Over range has the probability that the part lies beyond the largest range.</para>
/// <para>In circuit something may lie in parallel: resistance, inductance and diode drop then read anywhere below the part's own value,
/// capacitance anywhere above; so a low resistance in circuit says less than the same with one leg lifted.</para>
/// </summary>
public static class ReadingLikelihood
{
    private const double Slip = 0.02;
    private const double SlipOverRange = 0.1;

    /// <summary>Likelihoods [good, modes…], scaled so that the largest is 1: only their ratios mean anything.</summary>
    /// <param name="reading">What was read.</param>
    /// <param name="good">The expectation when all is well.</param>
    /// <param name="modes">The failure modes, in the unit of <paramref name="good"/>.</param>
    /// <param name="instrument">What it was read with.</param>
    /// <param name="parallelChance">P(something in parallel matters in circuit), 0…1.</param>
    /// <param name="goodOverRange">P(over range) of a good part beyond what its range implies, 0…1.</param>
    /// <exception cref="ArgumentException">The reading is in another unit than the expectation, or a range is upside down.</exception>
    public static ImmutableArray<double> Of(
        Reading reading, ExpectedRange good, ImmutableArray<StateExpectation> modes, Instrument instrument, double parallelChance = 0.5, double goodOverRange = 0)
    {
        ImmutableArray<StateExpectation> states = [new StateExpectation("good", good.Low, good.High) { OverRange = goodOverRange }, .. modes];
        Check(reading, good.Unit, states);
        var scale = ReadingScale.For(good.Unit, reading.Mode, instrument, states.Max(s => Math.Max(Math.Abs(s.Low), Math.Abs(s.High))));
        var parallel = reading.OneLegLifted || !Parallels(reading.Mode) ? 0 : parallelChance;
        var view = new ReadingView(scale, Math.Clamp(parallel, 0, 1), reading.Mode is ReadingMode.Capacitance);
        ImmutableArray<double> raw = [.. states.Select(s => One(reading, s, view, instrument))];
        var largest = raw.Max();
        return [.. raw.Select(l => l / largest)];
    }

    private static double One(Reading reading, StateExpectation state, ReadingView view, Instrument instrument) => reading.Value.Kind switch
    {
        MeasuredKind.Value => Shown(reading.Value.Quantity!.Value.Value, reading.Mode, state, view, instrument),
        MeasuredKind.OverRange => ((1 - Slip) * (state.OverRange + ((1 - state.OverRange) * view.Beyond(state, Limit(reading, instrument))))) + (Slip * SlipOverRange),
        MeasuredKind.UnknownPart => state.UnknownPart,
        MeasuredKind.None => 1,
    };

    private static double Shown(double value, ReadingMode mode, StateExpectation state, ReadingView view, Instrument instrument)
    {
        var accuracy = instrument.Accuracy(mode, value) ?? Math.Abs(value) * 0.05;
        return ((1 - Slip) * (1 - state.OverRange) * view.Density(state, value, accuracy)) + (Slip / view.Scale.Span);
    }

    private static double Limit(Reading reading, Instrument instrument) =>
        reading.Value.Quantity?.Value ?? instrument.Largest(reading.Mode)?.FullScale ?? double.PositiveInfinity;

    private static bool Parallels(ReadingMode mode) => ReadingModes.FeedsThePart(mode) && mode is not ReadingMode.ComponentTester;

    private static void Check(Reading reading, Unit unit, ImmutableArray<StateExpectation> states)
    {
        if (reading.Value.Quantity is { } shown && shown.Unit != unit)
        {
            throw new ArgumentException(MeasurementProblems.WrongUnit(shown.ToString(), UnitSymbols.Name(shown.Unit), UnitSymbols.Name(unit)).ToString(), nameof(reading));
        }

        if (states.FirstOrDefault(s => !(s.Low <= s.High)) is { } upsideDown)
        {
            throw new ArgumentException(MeasurementProblems.UpsideDown(upsideDown.State, upsideDown.Low, upsideDown.High).ToString(), nameof(states));
        }
    }
}
