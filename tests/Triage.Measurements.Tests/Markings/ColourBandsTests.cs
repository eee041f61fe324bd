using FsCheck.Xunit;
using Triage.Measurements.Markings;
using Triage.Measurements.Quantities;
using Xunit;

namespace Triage.Measurements.Tests.Markings;

/// <summary>Against the colour table of IEC 60062, values from memory.</summary>
public class ColourBandsTests
{
    [Theory]
    [InlineData("yellow violet red", 4700, 20, null)]
    [InlineData("brown black red gold", 1000, 5, null)]
    [InlineData("yellow violet gold silver", 4.7, 10, null)]
    [InlineData("red red silver gold", 0.22, 5, null)]
    [InlineData("red red pink gold", 0.022, 5, null)]
    [InlineData("Brown, Black, Black, Red, Brown", 10000, 1, null)]
    [InlineData("green-blue-grey-orange-violet", 568000, 0.1, null)]
    [InlineData("brown green black brown red brown", 1500, 2, 100.0)]
    [InlineData("orange white black gray gold purple", 39e9, 5, 5.0)]
    public void Read_Bands_GivesValueToleranceAndDrift(string bands, double ohms, double percent, double? drift) =>
        Assert.Equal(
            new Marking(new Quantity(ohms, Unit.Ohm), Tolerance.Even(percent)) { PerMillionPerKelvin = drift },
            ColourBands.Read(bands).Marking);

    [Theory]
    [InlineData("gold red black brown", "turn it round and read from the other end, or measure it")]
    [InlineData("brown black", "give three to six, in the order of reading")]
    [InlineData("brown mauve red", "use black, brown, red, orange, yellow, green, blue, violet, grey, white, gold, silver or pink")]
    [InlineData("1 2 3", "use black, brown, red, orange, yellow, green, blue, violet, grey, white, gold, silver or pink")]
    public void Read_NotAResistor_SaysWhatToDo(string bands, string instead) => Assert.Equal(instead, ColourBands.Read(bands).Problem?.Instead);

    [Fact]
    public void Read_SingleBlackBand_IsALink() => Assert.Equal(0, ColourBands.Read("black").Marking?.Value.Value);

    [Property]
    public bool WriteThenRead_GivesTheSameResistor(byte index, byte decade)
    {
        var ohms = ValueText.Read($"{PreferredNumbers.Decade(PreferredSeries.E96)[index % 96]}e{decade % 9}", Unit.Ohm).Quantity!.Value;
        return ColourBands.Write(ohms, 1) is { } bands && ColourBands.Read(bands).Marking == new Marking(ohms, Tolerance.Even(1));
    }
}
