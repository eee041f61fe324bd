using Triage.Measurements.Instruments;
using Triage.Measurements.Quantities;
using Triage.Measurements.Readings;
using Xunit;

namespace Triage.Measurements.Tests.Instruments;

public class InstrumentTests
{
    /// <summary>±(0.5 % + 2) on a 20 V range with 10 mV steps at 12 V: 60 mV + 20 mV.</summary>
    [Fact]
    public void Accuracy_IsPercentOfReadingPlusCounts() =>
        Assert.Equal(0.08, new InstrumentRange(ReadingMode.DcVolts, 20, 0.01, 0.5, 2).Accuracy(12), 12);

    [Fact]
    public void Accuracy_TakesTheSmallestRangeThatShowsTheValue() =>
        Assert.Equal(2, Instrument.Ordinary.RangeFor(ReadingMode.DcVolts, -1.5)!.FullScale, 9);

    [Fact]
    public void Accuracy_BeyondEveryRange_IsNone() => Assert.Null(Instrument.Ordinary.Accuracy(ReadingMode.Resistance, 1e9));

    /// <summary>10 MΩ across a 1 MΩ source: 10/11, 9.1 % low (Ohm's law).</summary>
    [Fact]
    public void TenMegohmMeterOnOneMegohmSource_ReadsNinePercentLow()
    {
        Assert.Equal(0.0909, 1 - Loading.Shown(1, 1e6, Instrument.Ordinary.InputOhms), 4);
        Assert.Equal(5, Loading.Unloaded(Loading.Shown(5, 1e6, 1e7), 1e6, 1e7), 12);
    }

    [Fact]
    public void LoadedExpectation_MovesWithTheMeter() =>
        Assert.Equal(10, ExpectedRange.Within(new Quantity(11, Unit.Volt), 0, 0, ExpectedBy.Drawing).Loaded(1e6, 1e7).Low, 9);

    [Fact]
    public void NegativeSupply_KeepsLowBelowHigh()
    {
        var range = ExpectedRange.Within(new Quantity(-12, Unit.Volt), 5, 5, ExpectedBy.Drawing);
        Assert.Equal((-12.6, -11.4), (Math.Round(range.Low, 9), Math.Round(range.High, 9)));
    }

    private static readonly ExpectedRange KnownTenK = new(9990, 10010, Unit.Ohm, ExpectedBy.WorkingUnit);

    /// <summary>Shown 10.01 kΩ on 10 kΩ ±0.1 %: it errs by 20 Ω at most, and a count of 10 Ω; the data sheet grants 1 % and 5 counts.</summary>
    [Fact]
    public void TriedOnAKnownGoodPart_ErrsLess()
    {
        var (tried, problem) = Instrument.Ordinary.TriedOn(ReadingMode.Resistance, KnownTenK, 10010);
        Assert.Null(problem);
        Assert.Equal(30, tried.Accuracy(ReadingMode.Resistance, 10010)!.Value, 6);
        Assert.Equal(Instrument.Ordinary.Accuracy(ReadingMode.Resistance, 100), tried.Accuracy(ReadingMode.Resistance, 100));
    }

    [Fact]
    public void TriedOnAKnownGoodPart_FarOff_IsAProblemAndChangesNothing()
    {
        var (tried, problem) = Instrument.Ordinary.TriedOn(ReadingMode.Resistance, KnownTenK, 11000);
        Assert.Equal("ordinary meter shows 11000 on a part known to lie from 9990 to 10010", problem?.What);
        Assert.Same(Instrument.Ordinary, tried);
    }
}
