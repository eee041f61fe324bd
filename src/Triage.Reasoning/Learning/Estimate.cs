namespace Triage.Reasoning.Learning;

/// <summary>A probability with the number of (pseudo-)jobs behind it.</summary>
/// <param name="Mean">0 … 1.</param>
/// <param name="Weight">Effective sample size: a Beta with a = Mean · Weight, b = (1 − Mean) · Weight; infinite means exactly known.</param>
public readonly record struct Estimate(double Mean, double Weight)
{
    /// <summary>
    /// Equal-tailed interval of the Beta; everything when nothing is behind it, the mean alone when it is certain. A mean of 0 or 1 with
    /// something behind it is that many failures or successes in a row: Jeffreys.
    /// </summary>
    /// <param name="level">Coverage, above 0 and below 1.</param>
    public Interval Interval(double level)
    {
        if (Weight <= 0) return new(0, 1);
        if (double.IsPositiveInfinity(Weight)) return new(Mean, Mean);
        if (Mean is <= 0 or >= 1) return BinomialIntervals.Jeffreys(Mean >= 1 ? Weight : 0, Weight, level);
        return BinomialIntervals.EqualTailed(Mean * Weight, (1 - Mean) * Weight, level);
    }
}
