using System.Collections.Immutable;
using FsCheck.Xunit;
using Triage.Measurements.Instruments;
using Triage.Measurements.Quantities;
using Triage.Measurements.Readings;
using Xunit;

namespace Triage.Measurements.Tests.Instruments;

public class ReadingLikelihoodTests
{
    private static readonly ExpectedRange TenK = ExpectedRange.Within(new Quantity(1e4, Unit.Ohm), 5, 5, ExpectedBy.Rating);
    private static readonly ImmutableArray<StateExpectation> Modes =
        [new("shorted", 0, 5), new("open", 1e8, 1e12), new("drifted up", 1.1e4, 1e5)];

    private static ImmutableArray<double> Ohms(MeasuredValue value, bool lifted) => ReadingLikelihood.Of(
        new Reading("R1", null, ReadingMode.Resistance, value) { OneLegLifted = lifted, Power = PowerState.OffDrained }, TenK, Modes, Instrument.Ordinary);

    private static ImmutableArray<double> Ohms(double value, bool lifted) => Ohms(MeasuredValue.Of(value, Unit.Ohm), lifted);

    [Theory]
    [InlineData(10020, 0)]
    [InlineData(9460, 0)]
    [InlineData(0.4, 1)]
    [InlineData(32000, 3)]
    public void LiftedReading_SpeaksForTheStateThatHoldsIt(double ohms, int state)
    {
        var likelihood = Ohms(ohms, lifted: true);
        Assert.Equal(1, likelihood[state]);
        Assert.All(likelihood.Where((_, i) => i != state), l => Assert.InRange(l, 1e-6, 0.1));
    }

    [Fact]
    public void OverRangeLifted_SpeaksForOpen() => Assert.Equal(1, Ohms(MeasuredValue.OverRange(), true)[2]);

    [Fact]
    public void LowReadingInCircuit_SaysLessThanWithOneLegLifted()
    {
        var inCircuit = Ohms(0.4, lifted: false);
        var lifted = Ohms(0.4, lifted: true);
        Assert.True(lifted[1] / lifted[0] > 10 * inCircuit[1] / inCircuit[0]);
        Assert.True(inCircuit[1] > inCircuit[0]);
    }

    [Fact]
    public void ReadingAboveExpectationInCircuit_StillRulesAgainstGood() => Assert.True(Ohms(32000, lifted: false)[0] < 0.05);

    [Fact]
    public void NoReading_SaysNothing() => Assert.Equal([1.0, 1, 1, 1], Ohms(MeasuredValue.None, true));

    /// <summary>20 V range at 12 V: even spread of 1.2 V, error within it: density 0.98/1.2 + slip 0.02/40; the low state has the slip alone.</summary>
    [Fact]
    public void Voltage_MatchesTheDensityWorkedByHand()
    {
        var instrument = new Instrument("hand", [new InstrumentRange(ReadingMode.DcVolts, 20, 0.01, 0.5, 2)]);
        var likelihood = ReadingLikelihood.Of(
            new Reading("rail", "chassis", ReadingMode.DcVolts, MeasuredValue.Of(12, Unit.Volt)),
            ExpectedRange.Within(new Quantity(12, Unit.Volt), 5, 5, ExpectedBy.Drawing), [new("low", 0, 10)], instrument);
        Assert.Equal((0.02 / 40) / ((0.98 / 1.2) + (0.02 / 40)), likelihood[1], 9);
    }

    [Fact]
    public void ReadingJustOutsideTolerance_IsForgivenAsFarAsTheInstrumentErrs()
    {
        var accuracy = Instrument.Ordinary.Accuracy(ReadingMode.Resistance, 10500)!.Value;
        double GoodOverShorted(double ohms) => Ohms(ohms, true) is var l ? l[0] / l[1] : 0;
        Assert.True(GoodOverShorted(10500 + (accuracy * 0.9)) > 3);
        Assert.Equal(1, GoodOverShorted(10500 + (accuracy * 1.5)), 9);
    }

    [Fact]
    public void WrongUnit_IsRefused() =>
        Assert.Contains("where Ω is expected", Assert.Throws<ArgumentException>(() => Ohms(MeasuredValue.Of(5, Unit.Volt), true)).Message, StringComparison.Ordinal);

    /// <summary>A density over the axis and the over-range probability sum to 1 for every state: the ratios are of the same whole.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void DensityOfEachState_SumsToOne(bool lifted)
    {
        var scale = ReadingScale.For(Unit.Ohm, ReadingMode.Resistance, Instrument.Ordinary, 1e12);
        var view = new ReadingView(scale, lifted ? 0 : 0.5, false);
        foreach (var state in Modes.Add(new("good", 9500, 10500)))
        {
            var (from, step) = (scale.At(0), 0.0005);
            var below = Enumerable.Range(0, (int)(scale.Span / step))
                .Sum(i => view.Density(state, Math.Exp(from + ((i + 0.5) * step)), 1e-3 * Math.Exp(from + ((i + 0.5) * step))) * step);
            var missed = state.State == "open" && !lifted ? 0.5 * (1 - (scale.Span / (Math.Log(1e12) - from))) : 0;
            Assert.Equal(1, below + view.Beyond(state, 2e7) + missed, 2);
        }
    }

    [Property]
    public bool EveryReading_GivesLikelihoodsAboveZeroUpToOne(double ohms, bool lifted)
    {
        var likelihood = Ohms(double.IsFinite(ohms) ? ohms : 0, lifted);
        return likelihood.Max() == 1 && likelihood.All(l => l is > 0 and <= 1);
    }
}
