using MathNet.Numerics.Distributions;

namespace Triage.Reasoning.Learning;

/// <summary>
/// Two-sided intervals for a proportion, x successes of n. Level is the coverage, above 0 and below 1.
/// Names and formulas as in Brown, Cai and DasGupta, "Interval estimation for a binomial proportion", Statistical Science 16(2), 2001.
/// </summary>
public static class BinomialIntervals
{
    /// <summary>Equal-tailed interval of a Beta(a, b) with positive a and b.</summary>
    public static Interval EqualTailed(double a, double b, double level)
    {
        double tail = Tail(level);
        return new(BetaQuantile(a, b, tail), BetaQuantile(a, b, 1 - tail));
    }

    /// <summary>Jeffreys: equal-tailed with the prior Beta(1/2, 1/2); the ends 0 and 1 belong to it when x is 0 or n.</summary>
    public static Interval Jeffreys(double x, double n, double level)
    {
        Check(x, n);
        Interval inner = EqualTailed(x + 0.5, n - x + 0.5, level);
        return new(x == 0 ? 0 : inner.Lower, x == n ? 1 : inner.Upper);
    }

    /// <summary>Clopper and Pearson 1934: never covers less than the level.</summary>
    public static Interval ClopperPearson(double x, double n, double level)
    {
        Check(x, n);
        double tail = Tail(level);
        return new(
            x == 0 ? 0 : BetaQuantile(x, n - x + 1, tail),
            x == n ? 1 : BetaQuantile(x + 1, n - x, 1 - tail));
    }

    /// <summary>Wilson 1927: inverts the score test.</summary>
    public static Interval Wilson(double x, double n, double level)
    {
        Check(x, n);
        double z = Normal.InvCDF(0, 1, 1 - Tail(level));
        double share = x / n;
        double centre = (share + z * z / (2 * n)) / (1 + z * z / n);
        double half = z / (1 + z * z / n) * Math.Sqrt(share * (1 - share) / n + z * z / (4 * n * n));
        return new(Math.Max(0, centre - half), Math.Min(1, centre + half));
    }

    static double BetaQuantile(double a, double b, double p) => Beta.InvCDF(a, b, p);

    static double Tail(double level) => level is > 0 and < 1
        ? (1 - level) / 2
        : throw new ArgumentOutOfRangeException(nameof(level), level, "The level of an interval lies above 0 and below 1, such as 0.95.");

    static void Check(double x, double n)
    {
        if (!(n > 0 && x >= 0 && x <= n))
            throw new ArgumentOutOfRangeException(nameof(x), x, $"Successes must lie between 0 and the number of trials, which must be positive; it is {n}.");
    }
}
