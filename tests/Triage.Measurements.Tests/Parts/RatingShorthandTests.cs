using Triage.Measurements.Parts;
using Triage.Measurements.Quantities;
using Xunit;

namespace Triage.Measurements.Tests.Parts;

public class RatingShorthandTests
{
    [Theory]
    [InlineData("47/16", 47e-6, 16)]
    [InlineData("100/25", 100e-6, 25)]
    [InlineData("0.1/5.5", 0.1, 5.5)]
    [InlineData("0,47/5,5", 0.47, 5.5)]
    [InlineData("0.1/50", 0.1e-6, 50)]
    [InlineData("1000/6.3V", 1000e-6, 6.3)]
    [InlineData("820/2.5", 820e-6, 2.5)]
    [InlineData("4n7/400", 4.7e-9, 400)]
    public void Read_ValueOverVolts_IsACapacitor(string text, double farads, double volts)
    {
        var rating = RatingShorthand.Read(text);
        Assert.Equal((new Quantity(farads, Unit.Farad), volts), (rating?.Value, rating?.Volts));
    }

    [Fact]
    public void Read_DoubleLayerVoltage_SaysThatItAssumedFarads() =>
        Assert.Equal("taken as farads: 5.5 V is a double-layer rating", RatingShorthand.Read("0.1/5.5")?.Assumed);

    [Theory]
    [InlineData("T1A", FuseSpeed.TimeLag, 1)]
    [InlineData("F500mA", FuseSpeed.Quick, 0.5)]
    [InlineData("T3.15A", FuseSpeed.TimeLag, 3.15)]
    [InlineData("FF 2 A", FuseSpeed.VeryQuick, 2)]
    public void Read_Fuse_GivesSpeedAndCurrent(string text, FuseSpeed speed, double amperes) =>
        Assert.Equal(new PartRating { Speed = speed, Amperes = amperes }, RatingShorthand.Read(text));

    [Theory]
    [InlineData("plays")]
    [InlineData("1/x")]
    [InlineData("12 V")]
    [InlineData("10k/16")]
    [InlineData("")]
    public void Read_NoRating_IsNull(string text) => Assert.Null(RatingShorthand.Read(text));
}
