namespace Triage.Reasoning.Learning;

/// <summary>
/// ln P(findings | cause) by averaged one-dependence estimators (Webb, Boughton and Wang 2005) over parents that are fixed in advance: the mean
/// over parents j of P(x_j | c) Π_k P(x_k | c, x_j), with P(x_k | c, x_j) leaning with κ pseudo-jobs on P(x_k | c). A parent that is
/// not known leaves the others independent, so that it is one joint model whatever happens to be known.
/// </summary>
internal static class OneDependence
{
    /// <param name="alone">P(value | cause) of each finding known, above 0.</param>
    /// <param name="known">Which of the findings known are parents.</param>
    /// <param name="parents">How many parents there are, known or not.</param>
    /// <param name="beside">How often the cause showed the k-th value beside the j-th, and how often the k-th finding was checked then; in jobs.</param>
    internal static double LogLikelihood(double[] alone, IReadOnlyCollection<int> known, int parents, double kappa, Func<int, int, (double Seen, double Of)> beside)
    {
        double independent = alone.Sum(p => Math.Log(p));
        if (known.Count == 0) return independent;
        double[] components = [.. known.Select(j => Given(alone, j, kappa, beside))];
        double most = Math.Max(independent, components.Max());
        double sum = components.Sum(log => Math.Exp(log - most)) + (parents - components.Length) * Math.Exp(independent - most);
        return most + Math.Log(sum / parents);
    }

    /// <summary>P(x_k | c, x_j).</summary>
    internal static double Conditional(double alone, double kappa, (double Seen, double Of) beside) => (beside.Seen + kappa * alone) / (beside.Of + kappa);

    static double Given(double[] alone, int parent, double kappa, Func<int, int, (double Seen, double Of)> beside)
    {
        double log = Math.Log(alone[parent]);
        for (int k = 0; k < alone.Length; k++)
            if (k != parent) log += Math.Log(Conditional(alone[k], kappa, beside(parent, k)));
        return log;
    }
}
