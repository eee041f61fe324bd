using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>A distribution over values with the number of (pseudo-)jobs behind it (a Dirichlet).</summary>
/// <param name="Mean">One per value, summing to 1.</param>
/// <param name="Weight">Sum of the Dirichlet's parameters; infinite means exactly known.</param>
public sealed record Distribution(ImmutableArray<double> Mean, double Weight)
{
    /// <summary>Of yes and no.</summary>
    internal static Distribution Beta(Estimate estimate) => new([estimate.Mean, 1 - estimate.Mean], estimate.Weight);

    public Estimate this[int value] => new(Mean[value], Weight);

    /// <summary>P(value at most x), one per x.</summary>
    internal double[] Cumulative()
    {
        var sums = new double[Mean.Length];
        double sum = 0;
        for (int x = 0; x < sums.Length; x++) sums[x] = sum += Mean[x];
        sums[^1] = 1;
        return sums;
    }

    /// <summary>Dirichlet–multinomial update: this is the prior, its weight the pseudo-jobs (Gelman et al., Bayesian Data Analysis, 3.4).</summary>
    internal Distribution Updated(double[] counts)
    {
        double seen = counts.Sum();
        return seen == 0 || double.IsPositiveInfinity(Weight)
            ? this
            : new(Mixed(counts, seen, Weight), seen + Weight);
    }

    /// <summary>
    /// What holds one step more special: its mean is drawn from a Dirichlet(κ · this mean), then the counts are seen.
    /// The variance follows the law of total variance, with r = κ / (n + κ) and this one's own variance v = m (1 − m) / (w + 1):
    /// m (1 − m) / (w' + 1) = (m (1 − m) − r² v) / (n + κ + 1) + r² v.
    /// </summary>
    internal Distribution Child(double[] counts, double kappa)
    {
        if (double.IsPositiveInfinity(kappa)) return this;
        double seen = counts.Sum();
        double fromParent = Math.Pow(kappa / (seen + kappa), 2) / (Weight + 1);
        double spread = (1 - fromParent) / (seen + kappa + 1) + fromParent;
        return new(Mixed(counts, seen, kappa), 1 / spread - 1);
    }

    ImmutableArray<double> Mixed(double[] counts, double seen, double pseudo) =>
        [.. Mean.Select((m, i) => (counts[i] + pseudo * m) / (seen + pseudo))];
}
