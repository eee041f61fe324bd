namespace Triage.Reasoning;

/// <summary>Lower and upper end of an interval for a probability.</summary>
public readonly record struct Interval(double Lower, double Upper)
{
    /// <summary>The least widening that holds a probability too: a shortest interval of a skewed one need not hold its mean.</summary>
    public Interval With(double probability) => new(Math.Min(Lower, probability), Math.Max(Upper, probability));
}
