namespace Triage.Reasoning.Learning;

/// <summary>
/// How often each fault comes, compared only with jobs on machines that could have had it: P(f | job) = a_f λ_f / Λ with Λ = Σ a λ over the
/// machine's scope (conditional logit with availability; Luce 1959). λ_f = (β_f m_f + n_f) / (β_f + e_f) with the exposure e_f = Σ_jobs a_f / Λ is the
/// posterior mode of ln λ under Gamma(β m, β), reached by the MM updates of Hunter 2004, "MM algorithms for generalized Bradley–Terry models".
/// Where all machines can have the same faults it is the Dirichlet–multinomial.
/// </summary>
internal sealed class Rates
{
    // where the notes think that nothing can fail
    const double Slowest = 1e-12;

    readonly double[] exposure;
    readonly double[] sums;

    Rates(RatePrior prior, double[] rate, double[] exposure, double[] sums) => (Prior, Rate, this.exposure, this.sums) = (prior, rate, exposure, sums);

    internal RatePrior Prior { get; }

    /// <summary>λ, one per fault of the notes.</summary>
    internal double[] Rate { get; }

    /// <summary>Whether any job could have had the fault.</summary>
    internal bool Met(int fault) => exposure[fault] > 0;

    /// <param name="scopes">In the order of the counts.</param>
    internal static Rates Fit(RatePrior prior, CauseCounts counts, IReadOnlyList<ScopeFaults> scopes)
    {
        int[] met = [.. Enumerable.Range(0, scopes.Count).Where(s => counts.Jobs[s] > 0)];
        double[] logs = FixedPoint.Of(LogSums(prior.Rate), at => LogSums(With(prior, counts, scopes, Sums(at)).Rate));
        return With(prior, counts, scopes, Sums(logs));

        double[] LogSums(double[] rates) => [.. met.Select(s => Math.Log(Math.Max(Slowest, scopes[s].Sum(rates))))];

        double[] Sums(double[] logSums)
        {
            var sums = new double[scopes.Count];
            for (int i = 0; i < met.Length; i++) sums[met[i]] = Math.Exp(logSums[i]);
            return sums;
        }
    }

    /// <summary>What other counts give while every Λ stays as it is here.</summary>
    internal Rates Under(RatePrior prior, CauseCounts counts, IReadOnlyList<ScopeFaults> scopes) => With(prior, counts, scopes, sums);

    static Rates With(RatePrior prior, CauseCounts counts, IReadOnlyList<ScopeFaults> scopes, double[] sums)
    {
        var exposure = new double[prior.Rate.Length];
        for (int s = 0; s < sums.Length; s++)
            if (counts.Jobs[s] > 0) scopes[s].Spread(counts.Jobs[s] / sums[s], exposure);
        return new(prior, [.. exposure.Select((e, f) => prior.Updated(f, counts.Had[f], e))], exposure, sums);
    }

    /// <summary>Share of each fault of a scope; they sum to 1.</summary>
    internal double[] Shares(ScopeFaults scope)
    {
        double sum = scope.Sum(Rate);
        return [.. scope.Faults.Select((f, i) => sum > 0 ? scope.Availability[i] * Rate[f] / sum : 1.0 / scope.Faults.Length)];
    }

    /// <summary>Jobs behind each of these shares.</summary>
    internal double[] Weights(ScopeFaults scope) => Prior.Weights(scope, exposure, Math.Max(Slowest, scope.Sum(Rate)));

    /// <summary>How many of the jobs of these machines each fault would be expected to have had.</summary>
    internal double[] Expected(IReadOnlyList<ScopeFaults> scopes, double[] jobs)
    {
        var expected = new double[Rate.Length];
        for (int s = 0; s < scopes.Count; s++)
        {
            if (jobs[s] == 0) continue;
            double[] shares = Shares(scopes[s]);
            for (int i = 0; i < shares.Length; i++) expected[scopes[s].Faults[i]] += jobs[s] * shares[i];
        }
        return expected;
    }
}
