using FsCheck.Xunit;
using Triage.Measurements.Markings;
using Xunit;

namespace Triage.Measurements.Tests.Markings;

/// <summary>Against the tables of IEC 60063 as widely reprinted in resistor data sheets.</summary>
public class PreferredNumbersTests
{
    [Theory]
    [InlineData(PreferredSeries.E3, "1 2.2 4.7")]
    [InlineData(PreferredSeries.E6, "1 1.5 2.2 3.3 4.7 6.8")]
    [InlineData(PreferredSeries.E12, "1 1.2 1.5 1.8 2.2 2.7 3.3 3.9 4.7 5.6 6.8 8.2")]
    [InlineData(PreferredSeries.E24, "1 1.1 1.2 1.3 1.5 1.6 1.8 2 2.2 2.4 2.7 3 3.3 3.6 3.9 4.3 4.7 5.1 5.6 6.2 6.8 7.5 8.2 9.1")]
    [InlineData(
        PreferredSeries.E48,
        "1 1.05 1.1 1.15 1.21 1.27 1.33 1.4 1.47 1.54 1.62 1.69 1.78 1.87 1.96 2.05 2.15 2.26 2.37 2.49 2.61 2.74 2.87 3.01 "
        + "3.16 3.32 3.48 3.65 3.83 4.02 4.22 4.42 4.64 4.87 5.11 5.36 5.62 5.9 6.19 6.49 6.81 7.15 7.5 7.87 8.25 8.66 9.09 9.53")]
    [InlineData(
        PreferredSeries.E96,
        "1 1.02 1.05 1.07 1.1 1.13 1.15 1.18 1.21 1.24 1.27 1.3 1.33 1.37 1.4 1.43 1.47 1.5 1.54 1.58 1.62 1.65 1.69 1.74 1.78 1.82 "
        + "1.87 1.91 1.96 2 2.05 2.1 2.15 2.21 2.26 2.32 2.37 2.43 2.49 2.55 2.61 2.67 2.74 2.8 2.87 2.94 3.01 3.09 3.16 3.24 3.32 3.4 "
        + "3.48 3.57 3.65 3.74 3.83 3.92 4.02 4.12 4.22 4.32 4.42 4.53 4.64 4.75 4.87 4.99 5.11 5.23 5.36 5.49 5.62 5.76 5.9 6.04 6.19 "
        + "6.34 6.49 6.65 6.81 6.98 7.15 7.32 7.5 7.68 7.87 8.06 8.25 8.45 8.66 8.87 9.09 9.31 9.53 9.76")]
    public void Decade_IsThePublishedTable(PreferredSeries series, string values) =>
        Assert.Equal(values, string.Join(' ', PreferredNumbers.Decade(series)));

    [Fact]
    public void E192_Has920WhereTheFormulaGives919()
    {
        Assert.True(PreferredNumbers.Contains(PreferredSeries.E192, 920));
        Assert.False(PreferredNumbers.Contains(PreferredSeries.E192, 919));
        Assert.Equal([9.09, 9.2, 9.31, 9.42], PreferredNumbers.Decade(PreferredSeries.E192).Where(v => v is > 9 and < 9.5));
    }

    [Theory]
    [InlineData(PreferredSeries.E12, 5000, 4700)]
    [InlineData(PreferredSeries.E12, 9.6, 10)]
    [InlineData(PreferredSeries.E3, 8.9, 10)]
    [InlineData(PreferredSeries.E24, 4.88e-9, 4.7e-9)]
    [InlineData(PreferredSeries.E96, 5000, 4990)]
    public void Nearest_IsByRatioAndCrossesDecades(PreferredSeries series, double value, double nearest) =>
        Assert.Equal(nearest, PreferredNumbers.Nearest(series, value), nearest * 1e-12);

    [Theory]
    [InlineData(4.7e-9, PreferredSeries.E3)]
    [InlineData(33e3, PreferredSeries.E6)]
    [InlineData(8.2, PreferredSeries.E12)]
    [InlineData(5.1e6, PreferredSeries.E24)]
    [InlineData(4990, PreferredSeries.E96)]
    [InlineData(4930, PreferredSeries.E192)]
    public void Coarsest_NamesTheSeriesAValueComesFrom(double value, PreferredSeries series) =>
        Assert.Equal(series, PreferredNumbers.Coarsest(value));

    [Fact]
    public void Coarsest_OfAValueInNoSeries_IsNone() => Assert.Null(PreferredNumbers.Coarsest(4950));

    [Property]
    public bool EveryValueOfEverySeries_IsItsOwnNearest(byte series, ushort index, sbyte decade)
    {
        var which = Enum.GetValues<PreferredSeries>()[series % 7];
        var values = PreferredNumbers.Decade(which);
        var value = values[index % values.Length] * Math.Pow(10, decade % 12);
        return PreferredNumbers.Contains(which, value);
    }
}
