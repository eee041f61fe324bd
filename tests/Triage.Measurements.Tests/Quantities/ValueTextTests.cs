using FsCheck.Xunit;
using Triage.Measurements.Quantities;
using Xunit;

namespace Triage.Measurements.Tests.Quantities;

public class ValueTextTests
{
    [Theory]
    [InlineData("4n7", null, 4.7e-9, Unit.Farad)]
    [InlineData("2k2", null, 2200, Unit.Ohm)]
    [InlineData("4R7", null, 4.7, Unit.Ohm)]
    [InlineData("R47", null, 0.47, Unit.Ohm)]
    [InlineData("1M5", null, 1.5e6, Unit.Ohm)]
    [InlineData("3k3 ohm", null, 3300, Unit.Ohm)]
    [InlineData("4R7 Ω", null, 4.7, Unit.Ohm)]
    [InlineData("4V7", null, 4.7, Unit.Volt)]
    [InlineData("3F3", null, 3.3, Unit.Farad)]
    [InlineData("100n", null, 1e-7, Unit.Farad)]
    [InlineData("100n", Unit.Henry, 1e-7, Unit.Henry)]
    [InlineData("12 k", Unit.Hertz, 12000, Unit.Hertz)]
    [InlineData("0.1 F", null, 0.1, Unit.Farad)]
    [InlineData("0.1F", null, 0.1, Unit.Farad)]
    [InlineData("1,2 k", null, 1200, Unit.Ohm)]
    [InlineData("1,2 k", Unit.Ohm, 1200, Unit.Ohm)]
    [InlineData("11.2 V", null, 11.2, Unit.Volt)]
    [InlineData("11.2", Unit.Volt, 11.2, Unit.Volt)]
    [InlineData("5.5V", null, 5.5, Unit.Volt)]
    [InlineData("10 mV", null, 0.01, Unit.Volt)]
    [InlineData("-0.3 V", null, -0.3, Unit.Volt)]
    [InlineData("−0.3 V", null, -0.3, Unit.Volt)]
    [InlineData(".5 V", null, 0.5, Unit.Volt)]
    [InlineData("47\u00B5", null, 47e-6, Unit.Farad)]
    [InlineData("47\u03BC", null, 47e-6, Unit.Farad)]
    [InlineData("47u", null, 47e-6, Unit.Farad)]
    [InlineData("47 \u03BCF", null, 47e-6, Unit.Farad)]
    [InlineData("47 MFD", null, 47e-6, Unit.Farad)]
    [InlineData("470 \u03A9", null, 470, Unit.Ohm)]
    [InlineData("470 \u2126", null, 470, Unit.Ohm)]
    [InlineData("10 mΩ", null, 0.01, Unit.Ohm)]
    [InlineData("10 MΩ", null, 1e7, Unit.Ohm)]
    [InlineData("1 234,5 mV", null, 1.2345, Unit.Volt)]
    [InlineData("1\u00A0234,5 mV", null, 1.2345, Unit.Volt)]
    [InlineData("1.234,5 V", null, 1234.5, Unit.Volt)]
    [InlineData("1,234.5 V", null, 1234.5, Unit.Volt)]
    [InlineData("1'234 V", null, 1234, Unit.Volt)]
    [InlineData("1,234,567 ohm", null, 1234567, Unit.Ohm)]
    [InlineData("1.234 V", null, 1.234, Unit.Volt)]
    [InlineData("0,123 V", null, 0.123, Unit.Volt)]
    [InlineData("1,23 V", null, 1.23, Unit.Volt)]
    [InlineData("4.7E-9 F", null, 4.7e-9, Unit.Farad)]
    [InlineData("25 °C", null, 25, Unit.DegreeCelsius)]
    [InlineData("3 dB", null, 3, Unit.Decibel)]
    [InlineData("8 MHz", null, 8e6, Unit.Hertz)]
    [InlineData("5 min", null, 300, Unit.Second)]
    [InlineData("10 mH", null, 0.01, Unit.Henry)]
    [InlineData("3.5 mm", null, 0.0035, Unit.Metre)]
    public void Read_Number_GivesExactlyThatValue(string text, Unit? expected, double value, Unit unit) =>
        Assert.Equal(new Quantity(value, unit), ValueText.Read(text, expected).Quantity);

    [Theory]
    [InlineData("OL", MeasuredKind.OverRange)]
    [InlineData("0L", MeasuredKind.OverRange)]
    [InlineData("1.", MeasuredKind.OverRange)]
    [InlineData("open", MeasuredKind.OverRange)]
    [InlineData("Out of  range", MeasuredKind.OverRange)]
    [InlineData("> 20 MΩ", MeasuredKind.OverRange)]
    [InlineData("unknown part", MeasuredKind.UnknownPart)]
    [InlineData("No, unknown or damaged part", MeasuredKind.UnknownPart)]
    [InlineData("", MeasuredKind.None)]
    public void Read_WhatInstrumentsSayInsteadOfANumber_IsKept(string text, MeasuredKind kind) =>
        Assert.Equal(kind, ValueText.Read(text, null).Value?.Kind);

    [Theory]
    [InlineData("11.2", null, "\"11.2\" is a reading without a unit: add the unit, such as 11.2 V or 11.2 ohm")]
    [InlineData("10 m", null, "\"10 m\" is a reading without a unit: say what \"m\" counts, such as mV, mA or mF")]
    [InlineData("1,234 V", null, "\"1,234\" can mean 1.234 or 1234: write 1.234 or 1234")]
    [InlineData("1 23 V", null, "\"1 23\" has digits grouped in no usual way: write it with one decimal point and no grouping, such as 1234.5")]
    [InlineData("47 MF", null, "\"M\" before F is not a size met at a bench: check small m (thousandth) against capital M (million), and the unit")]
    [InlineData("8 mHz", null, "\"m\" before Hz is not a size met at a bench: check small m (thousandth) against capital M (million), and the unit")]
    [InlineData("470 Ω", Unit.Volt, "\"470 Ω\" is in Ω where V is expected: give it in V, or change what is measured")]
    [InlineData("3 bananas", null, "\"bananas\" is not a unit known here: write ohm, F, H, V, A, W, Hz, s, °C, %, dB or mm, with p, n, µ, m, k, M or G before it")]
    [InlineData("F1", null, "\"F1\" is not a value: write a number and a unit, such as 4n7, 2.2 k, 11.2 V, or OL for over range")]
    [InlineData("1e999 V", null, "\"1e999 V\" is too large or too small to be a value: check the digits and the exponent")]
    public void Read_Unreadable_SaysWhatIsWrongAndWhatToWrite(string text, Unit? expected, string problem) =>
        Assert.Equal(problem, ValueText.Read(text, expected).Problem?.ToString());

    [Theory]
    [InlineData(4.7e-9, Unit.Farad, "4.7 nF")]
    [InlineData(2200, Unit.Ohm, "2.2 kΩ")]
    [InlineData(11.2, Unit.Volt, "11.2 V")]
    [InlineData(47e-6, Unit.Farad, "47 \u00B5F")]
    [InlineData(0.1, Unit.Farad, "100 mF")]
    [InlineData(-0.3, Unit.Volt, "-300 mV")]
    [InlineData(0.5, Unit.Hertz, "0.5 Hz")]
    [InlineData(0, Unit.Volt, "0 V")]
    [InlineData(0.0035, Unit.Metre, "3.5 mm")]
    [InlineData(85, Unit.DegreeCelsius, "85 °C")]
    [InlineData(250, Unit.Number, "250")]
    public void Format_UsesEngineeringNotation(double value, Unit unit, string text) =>
        Assert.Equal(text, new Quantity(value, unit).ToString());

    [Fact]
    public void Format_RoundsBeforeChoosingThePrefix() => Assert.Equal("1 kΩ", ValueText.Format(new Quantity(999.96, Unit.Ohm), 4));

    [Property(MaxTest = 2000)]
    public bool FormatThenRead_GivesTheSameDouble(double value, byte unit)
    {
        var quantity = new Quantity(double.IsFinite(value) && Math.Abs(value) < 1e60 ? value : 1, Enum.GetValues<Unit>()[unit % 13]);
        var text = quantity.ToString();
        return text.Length > 80 || ValueText.Read(text, quantity.Unit is Unit.Number ? Unit.Number : null).Quantity == quantity;
    }

    [Property]
    public bool LetterStyle_AgreesWithPlainStyle(ushort before, ushort after, byte which)
    {
        string[] marks = ["p", "n", "u", "\u00B5", "\u03BC", "m", "k", "M"];
        var mark = marks[which % marks.Length];
        var unit = mark is "k" or "M" or "m" ? Unit.Ohm : Unit.Farad;
        var symbol = UnitSymbols.Symbol(unit);
        var plain = ValueText.Read($"{before}.{after} {mark}{symbol}", null);
        return plain.Understood && plain == ValueText.Read($"{before}{mark}{after}", unit) && plain == ValueText.Read($"{before}{mark}{after}{symbol}", null);
    }

    [Property(MaxTest = 2000)]
    public bool Read_AnyText_GivesAValueOrAProblemNeverBoth(string? text, bool known)
    {
        var read = ValueText.Read(text ?? "", known ? Unit.Volt : null);
        return read.Value is null != read.Problem is null;
    }
}
