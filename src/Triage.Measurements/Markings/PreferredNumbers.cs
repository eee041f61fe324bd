using System.Collections.Immutable;

namespace Triage.Measurements.Markings;

/// <summary>
/// IEC 60063 both ways: the values of a series, and whether and where a value lies in one.
/// E3 to E24 are historical and listed; E48 to E192 are 10^(i/n) to three digits, except that E192 has 9.20 where the formula gives 9.19.
/// </summary>
public static class PreferredNumbers
{
    private static readonly ImmutableArray<double> E24 =
        [1.0, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2.0, 2.2, 2.4, 2.7, 3.0, 3.3, 3.6, 3.9, 4.3, 4.7, 5.1, 5.6, 6.2, 6.8, 7.5, 8.2, 9.1];

    /// <summary>The values of one decade, from 1 up to below 10.</summary>
    public static ImmutableArray<double> Decade(PreferredSeries series)
    {
        var count = (int)series;
        return count <= 24
            ? [.. E24.Where((_, i) => i % (24 / count) == 0)]
            : [.. Enumerable.Range(0, count).Select(i => Rounded(Math.Pow(10, i / (double)count)))];
    }

    /// <summary>The value of the series nearest by ratio, in the decade of the value. Positive finite values only.</summary>
    public static double Nearest(PreferredSeries series, double value) =>
        Around(series, value).MinBy(v => Math.Abs(Math.Log(v / value)));

    /// <summary>Whether the value belongs to the series, to the last digit a double tells apart.</summary>
    public static bool Contains(PreferredSeries series, double value) =>
        double.IsFinite(value) && value > 0 && Math.Abs((Nearest(series, value) / value) - 1) < 1e-9;

    /// <summary>The coarsest series that holds the value; null when none does, which makes a decoded marking suspect.</summary>
    public static PreferredSeries? Coarsest(double value)
    {
        foreach (var series in Enum.GetValues<PreferredSeries>())
        {
            if (Contains(series, value))
            {
                return series;
            }
        }

        return null;
    }

    private static IEnumerable<double> Around(PreferredSeries series, double value)
    {
        if (!double.IsFinite(value) || value <= 0)
        {
            throw new ArgumentOutOfRangeException(nameof(value), value, MeasurementProblems.NotPositive);
        }

        var decade = (int)Math.Floor(Math.Log10(value));
        var values = Decade(series);
        return values.Select(v => Scaled(v, decade)).Append(Scaled(10, decade)).Append(Scaled(values[^1], decade - 1));
    }

    private static double Rounded(double exact)
    {
        var rounded = Math.Round(exact, 2, MidpointRounding.AwayFromZero);
        return rounded is 9.19 ? 9.20 : rounded;
    }

    /// <summary>By division for small decades, so that 4.7 thousandths is the double 0.0047.</summary>
    private static double Scaled(double value, int decade) => decade < 0 ? value / Math.Pow(10, -decade) : value * Math.Pow(10, decade);
}
