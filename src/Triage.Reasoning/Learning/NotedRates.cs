namespace Triage.Reasoning.Learning;

/// <summary>The notes' shares as rates. They need not sum to 1 in any scope, so each has a scale that says what its pseudo-jobs are worth.</summary>
/// <param name="Rate">m_f, one per fault.</param>
/// <param name="Scale">M_f: mean over the scopes that hold the fault of the sum of the shares there; 0 when no scope holds it.</param>
/// <param name="Jobs">Pseudo-jobs behind the shares of those scopes, likewise.</param>
internal sealed record NotedRates(double[] Rate, double[] Scale, double[] Jobs)
{
    internal static NotedRates Of(KnowledgeIndex known)
    {
        KnownFault[] faults = [.. known.Knowledge.Faults];
        double[] rates = [.. faults.Select(fault => fault.Share)];
        // the machines that the notes describe; one of them may hold the same faults as a machine that can have any
        ScopeFaults[] scopes = [.. known.Knowledge.Scopes.Select(scope => known.ScopeNumber(scope.Id)!.Value).Distinct().Order().DefaultIfEmpty(0).Select(s => known.Scopes[s])];
        double[] sums = [.. scopes.Select(scope => scope.Sum(rates))];
        double[] scale = ScopeFaults.Means(faults.Length, scopes, sums);
        double[] jobs = ScopeFaults.Means(faults.Length, scopes, [.. scopes.Select((scope, s) => sums[s] > 0 ? Behind(scope, sums[s]) : 1)]);
        double[] number = ScopeFaults.Means(faults.Length, scopes, [.. scopes.Select(scope => (double)scope.Faults.Length)]);
        // where the notes think that nothing can fail, all faults are alike
        for (int f = 0; f < rates.Length; f++)
            if (scale[f] == 0) (rates[f], scale[f]) = (1, number[f]);
        return new(rates, scale, jobs);

        double Behind(ScopeFaults scope, double sum) =>
            scope.Faults.Select((f, i) => rates[f] > 0 ? scope.Availability[i] * rates[f] / sum * faults[f].ShareWeight : 0).Sum();
    }

    /// <param name="most">Most pseudo-jobs that the notes may weigh.</param>
    internal RatePrior Prior(double most) => new(Rate, [.. Scale.Select((sum, f) =>
        sum == 0 ? 0 : double.IsPositiveInfinity(Jobs[f]) ? Jobs[f] : Math.Min(Jobs[f], most) / sum)]);
}
