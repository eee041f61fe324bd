namespace Triage.Reasoning.Learning;

/// <summary>
/// ln P(values | cause) by averaged one-dependence estimators (Webb, Boughton and Wang 2005): the mean over parents j of
/// P(x_j | c) Π_k P(x_k | c, x_j), with P(x_k | c, x_j) leaning with κ pseudo-jobs on P(x_k | c).
/// </summary>
internal sealed class OneDependence
{
    readonly double[][] alone;
    readonly double[]?[][] beside;

    /// <param name="alone">P(value | cause), above 0, by cause and number of the value.</param>
    internal OneDependence(ValueNumbers numbers, double[][] alone, JointCounts counts, double kappa)
    {
        this.alone = [.. alone.Select(Logarithms)];
        beside = [.. alone.Select((own, c) => own.Select((_, j) => counts.Beside(c, j) is { } row ? Row(numbers, own, row, kappa, j) : null).ToArray())];
    }

    internal double[] LogLikelihoods(int[] values) => [.. alone.Select((_, c) => values.Length == 0 ? 0 : LogLikelihood(c, values))];

    double LogLikelihood(int cause, int[] values)
    {
        Span<double> parents = stackalloc double[values.Length];
        double most = double.NegativeInfinity;
        for (int j = 0; j < parents.Length; j++)
        {
            // a parent that the cause never showed leaves the others independent
            double[] row = beside[cause][values[j]] ?? alone[cause];
            double sum = 0;
            foreach (int k in values) sum += row[k];
            parents[j] = sum;
            most = Math.Max(most, sum);
        }
        double total = 0;
        foreach (double parent in parents) total += Math.Exp(parent - most);
        return most + Math.Log(total / parents.Length);
    }

    /// <summary>ln P(x_k | c, x_j) for every k, and ln P(x_j | c) at j itself.</summary>
    static double[] Row(ValueNumbers numbers, double[] own, double[] counts, double kappa, int j)
    {
        double[] seen = numbers.ByFinding(counts);
        double[] row = [.. counts.Select((count, k) => (count + kappa * own[k]) / (seen[numbers.FindingOf[k]] + kappa))];
        row[j] = own[j];
        return Logarithms(row);
    }

    static double[] Logarithms(double[] chances) => [.. chances.Select(p => Math.Log(p))];
}
