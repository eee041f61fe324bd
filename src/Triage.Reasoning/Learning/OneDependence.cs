namespace Triage.Reasoning.Learning;

/// <summary>
/// ln P(findings | cause) by averaged one-dependence estimators (Webb, Boughton and Wang 2005) over parents that are fixed in advance: the mean
/// over parents j of P(x_j | c) Π_k P(x_k | c, x_j). A parent that is not known leaves the others independent, so that it is one joint
/// model whatever happens to be known.
/// </summary>
internal static class OneDependence
{
    /// <param name="alone">P(value | cause) of each finding known, above 0.</param>
    /// <param name="known">Which of the findings known are parents.</param>
    /// <param name="parents">How many parents there are, known or not.</param>
    /// <param name="given">P(x_k | c, x_j) by j and k.</param>
    internal static double LogLikelihood(double[] alone, IReadOnlyCollection<int> known, int parents, Func<int, int, double> given)
    {
        double independent = alone.Sum(Math.Log);
        if (known.Count == 0) return independent;
        double[] components = [.. known.Select(j => Given(alone, j, given))];
        double most = Math.Max(independent, components.Max());
        double sum = components.Sum(log => Math.Exp(log - most)) + (parents - components.Length) * Math.Exp(independent - most);
        return most + Math.Log(sum / parents);
    }

    /// <summary>
    /// P(x_k | c, x_j) on a machine: P(x_k | c) there, times what the pair changes on all machines, (n_jk / p_k + κ) / (n_j + κ) with
    /// p_k = (n_k + κ P(x_k | c)) / (n + κ), made to sum to 1. What sets machines apart stays in P(x_k | c); only what ties findings
    /// together is carried over.
    /// </summary>
    /// <param name="alone">P(x_k | c) on the machine, one per value.</param>
    /// <param name="counted">How often the cause showed each value, in jobs.</param>
    /// <param name="beside">How often each was seen beside x_j, in jobs.</param>
    /// <param name="kappa">Pseudo-jobs by which the pair leans on independence.</param>
    internal static double Conditional(double[] alone, double[] counted, double[] beside, double kappa, int value)
    {
        double all = counted.Sum(), sum = 0, own = 0;
        for (int v = 0; v < alone.Length; v++)
        {
            double part = alone[v] * (beside[v] / ((counted[v] + kappa * alone[v]) / (all + kappa)) + kappa);
            sum += part;
            if (v == value) own = part;
        }
        return own / sum;
    }

    static double Given(double[] alone, int parent, Func<int, int, double> given)
    {
        double log = Math.Log(alone[parent]);
        for (int k = 0; k < alone.Length; k++)
            if (k != parent) log += Math.Log(given(parent, k));
        return log;
    }
}
