namespace Triage.Reasoning.Planning;

/// <summary>P(one value of a test | set) over all sets: most are not linked to what the test shows and share one number.</summary>
/// <param name="usual">For every set that is not named.</param>
/// <param name="sets">The sets with a number of their own.</param>
/// <param name="own">Their numbers.</param>
internal sealed class LikelihoodRow(double usual, int[] sets, double[] own)
{
    public int Length => sets.Length;

    /// <summary>Puts belief · likelihood into product and returns its sum, the chance of the value.</summary>
    public double Multiply(double[] belief, double[] product)
    {
        Weights.Multiply(belief, usual, product);
        for (var i = 0; i < sets.Length; i++)
        {
            product[sets[i]] = belief[sets[i]] * own[i];
        }

        return Weights.Sum(product);
    }

    /// <summary>Σ belief · f(likelihood), for a belief that sums to 1.</summary>
    public double Expect(double[] belief, Func<double, double> f)
    {
        var (sum, others) = (0.0, 1.0);
        for (var i = 0; i < sets.Length; i++)
        {
            sum += belief[sets[i]] * f(own[i]);
            others -= belief[sets[i]];
        }

        return sum + (Math.Max(0, others) * f(usual));
    }
}
