namespace Triage.Reasoning.Learning;

/// <summary>A probability with the number of (pseudo-)jobs behind it.</summary>
/// <param name="Mean">0 … 1.</param>
/// <param name="Weight">Effective sample size: a Beta with a = Mean · Weight, b = (1 − Mean) · Weight; infinite means exactly known.</param>
public readonly record struct Estimate(double Mean, double Weight)
{
    /// <summary>
    /// Interval of the Beta; everything when nothing is behind it, the mean alone when it is certain. Equal-tailed, but where the density
    /// rises towards 0 or 1 that end belongs to it and the whole tail lies at the other, as in an interval of highest density (Box and
    /// Tiao 1973). A mean of 0 or 1 is that many failures or successes in a row: Jeffreys.
    /// </summary>
    /// <param name="level">Coverage, above 0 and below 1.</param>
    public Interval Interval(double level)
    {
        if (Weight <= 0) return new(0, 1);
        if (double.IsPositiveInfinity(Weight)) return new(Mean, Mean);
        if (Mean is <= 0 or >= 1) return BinomialIntervals.Jeffreys(Mean >= 1 ? Weight : 0, Weight, level);
        double a = Mean * Weight, b = (1 - Mean) * Weight;
        if (Math.Min(a, b) >= 1) return BinomialIntervals.EqualTailed(a, b, level);
        double tail = 1 - level;
        return a < b
            ? new(0, BinomialIntervals.EqualTailed(a, b, 1 - 2 * Math.Min(tail, 0.499)).Upper)
            : new(BinomialIntervals.EqualTailed(a, b, 1 - 2 * Math.Min(tail, 0.499)).Lower, 1);
    }
}
