using Triage.Measurements.Parts;
using Triage.Measurements.Quantities;
using Xunit;

namespace Triage.Measurements.Tests.Parts;

public class RatingTextTests
{
    [Theory]
    [InlineData("0.1 F 5.5 V", Unit.Farad, 0.1)]
    [InlineData("0.1 F 5.5 V", Unit.Volt, 5.5)]
    [InlineData("2200 uF 16 V", Unit.Farad, 2.2e-3)]
    [InlineData("47/16", Unit.Farad, 47e-6)]
    [InlineData("47/16", Unit.Volt, 16)]
    [InlineData("104K 50 V", Unit.Farad, 1e-7)]
    [InlineData("470K", Unit.Ohm, 470e3)]
    [InlineData("T 315 mA", Unit.Ampere, 0.315)]
    [InlineData("5 V 1 A", Unit.Volt, 5)]
    [InlineData("8 R 3 W", Unit.Ohm, 8)]
    [InlineData("8 R 3 W", Unit.Watt, 3)]
    [InlineData("6 x 1.5 V", Unit.Volt, 9)]
    [InlineData("3 V 20 mm", Unit.Volt, 3)]
    [InlineData("50 k log, with switch", Unit.Ohm, 5e4)]
    [InlineData("24 V coil, two changeover contacts", Unit.Volt, 24)]
    [InlineData("-18 V behind 1 M", Unit.Volt, -18)]
    public void Rating_IsReadAsAPartsListGivesIt(string text, Unit unit, double value) => Assert.Equal(value, RatingText.Read(text).In(unit)!.Value, 1e-12);

    [Theory]
    [InlineData("5 V behind 1 M", 1e6)]
    [InlineData("5 V through 470 k", 4.7e5)]
    public void SourceResistance_IsNotTakenForTheRating(string text, double ohms)
    {
        var rating = RatingText.Read(text);
        Assert.Equal(ohms, rating.SourceOhms);
        Assert.Null(rating.In(Unit.Ohm));
    }

    [Fact]
    public void Tolerance_ComesFromTheLetterOrThePercent()
    {
        Assert.Equal(10, RatingText.Read("104K 50 V").TolerancePercent);
        Assert.Equal(5, RatingText.Read("10 k ±5 %").TolerancePercent);
    }

    [Theory]
    [InlineData("flat, 70 mm across, 4 mm wide")]
    [InlineData("8 k x 8")]
    [InlineData("")]
    public void WhatIsNoElectricalRating_SaysNothingInVolts(string text) => Assert.Null(RatingText.Read(text).In(Unit.Volt));
}
