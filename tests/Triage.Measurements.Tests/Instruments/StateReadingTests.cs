using Triage.Measurements.Instruments;
using Triage.Measurements.Readings;
using Xunit;

namespace Triage.Measurements.Tests.Instruments;

public class StateReadingTests
{
    [Theory]
    [InlineData("0 … 20 R", ReadingMode.Resistance, 0, 20)]
    [InlineData("0 ... 20 R", ReadingMode.Resistance, 0, 20)]
    [InlineData("0.4 to 0.8 V", ReadingMode.DiodeDrop, 0.4, 0.8)]
    [InlineData("-5 V … -1 V", ReadingMode.DcVolts, -5, -1)]
    [InlineData("1 k … 5 k", ReadingMode.Resistance, 1e3, 5e3)]
    [InlineData("< 20 R", ReadingMode.Resistance, 0, 20)]
    [InlineData("> 10 M", ReadingMode.Resistance, 1e7, 1e12)]
    [InlineData("> 2 V", ReadingMode.DcVolts, 2, 20)]
    [InlineData("5 V ± 5 %", ReadingMode.DcVolts, 4.75, 5.25)]
    [InlineData("10 uF -20 +50 %", ReadingMode.Capacitance, 8e-6, 1.5e-5)]
    [InlineData("OL", ReadingMode.Resistance, 1e9, 1e12)]
    public void Range_WithoutRating_IsAsWritten(string text, ReadingMode mode, double low, double high)
    {
        var range = StateReading.Read(text, mode).State!.Range(null)!.Value;
        Assert.Equal(low, range.Low, Math.Abs(low) * 1e-12);
        Assert.Equal(high, range.High, Math.Abs(high) * 1e-12);
    }

    [Theory]
    [InlineData("rating ± 20 %", 8e3, 1.2e4)]
    [InlineData("rating -20 +50 %", 8e3, 1.5e4)]
    [InlineData("50 … 150 % of rating", 5e3, 1.5e4)]
    [InlineData("< 50 % of rating", 0, 5e3)]
    public void Range_OfARating_ScalesWithItAndNeedsIt(string text, double low, double high)
    {
        var state = StateReading.Read(text, ReadingMode.Resistance).State!;
        Assert.Equal((low, high), (Math.Round(state.Range(1e4)!.Value.Low, 6), Math.Round(state.Range(1e4)!.Value.High, 6)));
        Assert.Null(state.Range(null));
    }

    [Fact]
    public void NegativeRating_TurnsTheRangeRound()
    {
        var range = StateReading.Read("50 … 90 % of rating", ReadingMode.DcVolts).State!.Range(-12)!.Value;
        Assert.Equal((-10.8, -6.0), (Math.Round(range.Low, 9), Math.Round(range.High, 9)));
    }

    [Theory]
    [InlineData("flat and low", CapacitorBehaviour.Shorted)]
    [InlineData("climbs", CapacitorBehaviour.TakesCharge)]
    [InlineData("settles", CapacitorBehaviour.Leaky)]
    [InlineData("OL at once", CapacitorBehaviour.Open)]
    public void Behaviour_IsSaidInWordsAndOnlyForOhms(string words, CapacitorBehaviour behaviour)
    {
        Assert.Equal(behaviour, StateReading.Read(words, ReadingMode.Resistance).State!.Behaviour);
        Assert.NotNull(StateReading.Read(words, ReadingMode.DcVolts).Problem);
    }

    [Theory]
    [InlineData("1 … 5 k", ReadingMode.Resistance)]
    [InlineData("20 R … 5 R", ReadingMode.Resistance)]
    [InlineData("0 … 20 V", ReadingMode.Resistance)]
    [InlineData("low", ReadingMode.Resistance)]
    [InlineData("", ReadingMode.Resistance)]
    [InlineData("rating", ReadingMode.Resistance)]
    [InlineData("5 V ± lots %", ReadingMode.DcVolts)]
    [InlineData("> 1", ReadingMode.ComponentTester)]
    public void WhatIsNoRange_IsAProblemThatSaysWhatToWrite(string text, ReadingMode mode)
    {
        var (state, problem) = StateReading.Read(text, mode);
        Assert.Null(state);
        Assert.Contains("is not a range of readings: write 0 … 20 R", problem!.ToString(), StringComparison.Ordinal);
    }
}
