namespace Triage.Reasoning.Planning;

/// <summary>P(what is shown | set) over all sets: most are not linked to what a test shows and share one number.</summary>
/// <param name="usual">For every set that is not named.</param>
/// <param name="sets">The sets with a number of their own, ascending.</param>
/// <param name="own">Their numbers.</param>
internal sealed class LikelihoodRow(double usual, int[] sets, double[] own)
{
    public int Length => sets.Length;

    private double Usual => usual;

    private int[] Sets => sets;

    private double[] Own => own;

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

    /// <summary>P(both | set), of two things that are independent of each other given the set.</summary>
    public LikelihoodRow And(LikelihoodRow other)
    {
        var (named, numbers) = (new int[Length + other.Length], new double[Length + other.Length]);
        var count = 0;
        for (var (here, there) = (0, 0); here < Length || there < other.Length; count++)
        {
            var set = Math.Min(At(sets, here), At(other.Sets, there));
            var (mine, others) = (At(sets, here) == set, At(other.Sets, there) == set);
            named[count] = set;
            numbers[count] = (mine ? own[here++] : usual) * (others ? other.Own[there++] : other.Usual);
        }

        return new(usual * other.Usual, named[..count], numbers[..count]);
    }

    private static int At(int[] sets, int place) => place < sets.Length ? sets[place] : int.MaxValue;
}
