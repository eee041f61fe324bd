using Triage.Measurements.Quantities;
using Triage.Measurements.Readings;
using Xunit;

namespace Triage.Measurements.Tests.Readings;

public class TypedReadingTests
{
    [Theory]
    [InlineData("C14, ohms, off: 12 R", "off, drained", PowerState.OffDrained, false, false, null)]
    [InlineData("C14 one leg up: 12.1 R", "off", PowerState.Off, true, false, null)]
    [InlineData("Q2: 12 R", "off, C3 drained, out of circuit", PowerState.OffDrained, true, false, null)]
    [InlineData("C14: 12 R", "off-drained", PowerState.OffDrained, false, false, null)]
    [InlineData("C14: 12 R", "off and drained", PowerState.OffDrained, false, false, null)]
    [InlineData("C14: 12 R", "unknown", PowerState.Unknown, false, false, null)]
    [InlineData("C14 + to C14 -, resistance, power off-drained, no-load: 12 Ω", "on", PowerState.On, false, false, null)]
    [InlineData("C14: 12 R after 30 s", "full", PowerState.On, false, false, 30.0)]
    [InlineData("C14: 12 R, leads the other way", "limited", PowerState.Limited, false, true, null)]
    [InlineData("C14: 11.8 ohm after 30 s, 12 ohm leads reversed", "off, drained", PowerState.OffDrained, false, true, null)]
    [InlineData("C14 in place, drained: 11.8 R, after 30 s 11.9 R, leads the other way 12 R", "off, drained", PowerState.OffDrained, false, false, null)]
    public void Circumstances_ComeFromTheFieldAndTheWordsThatBelongToTheValue(string text, string? power, PowerState state, bool lifted, bool reversed, double? after)
    {
        var value = text.Contains("12.1", StringComparison.Ordinal) ? "12.1 R" : "12 R";
        var reading = new TypedReading { Text = text, From = "C14 +", To = "C14 -", Mode = "ohms", Value = value, Power = power }.Read().Reading!;
        Assert.Equal((state, lifted, reversed, after), (reading.Power, reading.OneLegLifted, reading.LeadsReversed, reading.AfterSeconds));
    }

    [Theory]
    [InlineData("volts DC", "4.9 V", ReadingMode.DcVolts)]
    [InlineData("dc-volts", "4.9", ReadingMode.DcVolts)]
    [InlineData("diode-drop", "0.6 V", ReadingMode.DiodeDrop)]
    [InlineData("series-resistance", "3 ohm", ReadingMode.SeriesResistance)]
    [InlineData("component-tester", "3 ohm", ReadingMode.ComponentTester)]
    [InlineData("component tester", "3.1 uF", ReadingMode.ComponentTester)]
    [InlineData(null, "3.34 kHz", ReadingMode.Frequency)]
    [InlineData(null, "OL", ReadingMode.Resistance)]
    public void Mode_IsWhatWasSaidOrWhatTheUnitSays(string? mode, string value, ReadingMode expected) =>
        Assert.Equal(expected, new TypedReading { Text = "x", Mode = mode, Value = value }.Read().Reading!.Mode);

    [Theory]
    [InlineData("none", LoadState.NoLoad)]
    [InlineData("no-load", LoadState.NoLoad)]
    [InlineData("47 R dummy", LoadState.Loaded)]
    [InlineData("unknown", LoadState.Unknown)]
    [InlineData(null, LoadState.Unknown)]
    public void Load_IsNoneOrSomething(string? load, LoadState expected) =>
        Assert.Equal(expected, new TypedReading { Text = "x", Value = "5 V", Load = load }.Read().Reading!.Load);

    [Fact]
    public void WordsAlone_AreReadAsAQuickLine()
    {
        var reading = new TypedReading { Text = "IC3 pin 8 4.9V" }.Read().Reading!;
        Assert.Equal(("IC3 pin 8", ReadingMode.DcVolts, "4.9 V"), (reading.From, reading.Mode, reading.Value.ToString()));
    }

    [Theory]
    [InlineData("ruler", "70 mm", "\"ruler\" is not a mode of an instrument known here")]
    [InlineData("ohms", "4.9 V", "\"4.9 V\" is in V where Ω is expected")]
    [InlineData(null, "4.9", "\"4.9\" is a reading without a unit")]
    [InlineData(null, null, "C14 says no value")]
    public void WhatCannotBeRead_IsAProblem(string? mode, string? value, string what)
    {
        var (reading, problem) = new TypedReading { Text = "x", From = "C14", Mode = mode, Value = value }.Read();
        Assert.Null(reading);
        Assert.Equal(what, problem!.What);
    }

    [Fact]
    public void EveryMode_IsFoundByTheWordThatNotesWrite() =>
        Assert.All(Enum.GetValues<ReadingMode>(), m => Assert.Equal(m, ReadingModeWords.Find(ReadingModeWords.Of(m))));
}
