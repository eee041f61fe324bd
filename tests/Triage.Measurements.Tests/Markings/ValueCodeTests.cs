using FsCheck.Xunit;
using Triage.Measurements.Markings;
using Triage.Measurements.Quantities;
using Xunit;

namespace Triage.Measurements.Tests.Markings;

public class ValueCodeTests
{
    /// <summary>Letter codes as in the tables of IEC 60062 (reprinted in BS 1852 summaries); digit codes common practice.</summary>
    [Theory]
    [InlineData("R47", Unit.Ohm, 0.47)]
    [InlineData("4R7", Unit.Ohm, 4.7)]
    [InlineData("470R", Unit.Ohm, 470)]
    [InlineData("4K7", Unit.Ohm, 4700)]
    [InlineData("47K", Unit.Ohm, 47000)]
    [InlineData("47K3", Unit.Ohm, 47300)]
    [InlineData("470K", Unit.Ohm, 470000)]
    [InlineData("4M7", Unit.Ohm, 4.7e6)]
    [InlineData("R010", Unit.Ohm, 0.01)]
    [InlineData("103", Unit.Ohm, 10000)]
    [InlineData("4702", Unit.Ohm, 47000)]
    [InlineData("1001", Unit.Ohm, 1000)]
    [InlineData("100", Unit.Ohm, 10)]
    [InlineData("000", Unit.Ohm, 0)]
    [InlineData("p33", Unit.Farad, 0.33e-12)]
    [InlineData("3p3", Unit.Farad, 3.3e-12)]
    [InlineData("4n7", Unit.Farad, 4.7e-9)]
    [InlineData("330n", Unit.Farad, 330e-9)]
    [InlineData("3µ3", Unit.Farad, 3.3e-6)]
    [InlineData("104", Unit.Farad, 100e-9)]
    [InlineData("479", Unit.Farad, 4.7e-12)]
    [InlineData("101", Unit.Henry, 100e-6)]
    [InlineData("4R7", Unit.Henry, 4.7e-6)]
    public void Read_Code_GivesTheValue(string code, Unit unit, double value) =>
        Assert.Equal(new Quantity(value, unit), ValueCode.Read(code, unit).Marking?.Value);

    [Theory]
    [InlineData("2K2J", Unit.Ohm, 5, 5)]
    [InlineData("4R7K", Unit.Ohm, 10, 10)]
    [InlineData("47KM", Unit.Ohm, 20, 20)]
    [InlineData("104K", Unit.Farad, 10, 10)]
    [InlineData("4n7J", Unit.Farad, 5, 5)]
    [InlineData("103Z", Unit.Farad, 20, 80)]
    public void Read_ToleranceLetter_FollowsTheValue(string code, Unit unit, double minus, double plus) =>
        Assert.Equal(new Tolerance(minus, plus), ValueCode.Read(code, unit).Marking?.Tolerance);

    [Theory]
    [InlineData("")]
    [InlineData("12")]
    [InlineData("4K7K7")]
    [InlineData("104X")]
    [InlineData("KM")]
    public void Read_NoCode_IsAProblem(string code) => Assert.NotNull(ValueCode.Read(code, Unit.Ohm).Problem);

    [Theory]
    [InlineData(4700, Unit.Ohm, 5.0, "4K7J")]
    [InlineData(0.47, Unit.Ohm, null, "R47")]
    [InlineData(0.01, Unit.Ohm, null, "R01")]
    [InlineData(470, Unit.Ohm, 1.0, "470RF")]
    [InlineData(4.7e-9, Unit.Farad, 10.0, "4n7K")]
    [InlineData(100e-9, Unit.Farad, null, "100n")]
    public void Write_GivesTheLetterCode(double value, Unit unit, double? percent, string code) =>
        Assert.Equal(code, ValueCode.Write(new Marking(new Quantity(value, unit), percent is { } p ? Tolerance.Even(p) : null)));

    [Property]
    public bool WriteThenRead_GivesTheSameForEveryE96Value(byte index, byte decade, bool farads)
    {
        var value = ValueText.Read($"{PreferredNumbers.Decade(PreferredSeries.E96)[index % 96]}e{(decade % 8) + (farads ? -12 : -1)}", farads ? Unit.Farad : Unit.Ohm).Quantity!.Value;
        return ValueCode.Read(ValueCode.Write(new Marking(value, Tolerance.Even(1))), value.Unit).Marking == new Marking(value, Tolerance.Even(1));
    }
}
