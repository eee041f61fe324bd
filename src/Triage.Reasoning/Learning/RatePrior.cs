namespace Triage.Reasoning.Learning;

/// <summary>What is believed of rates before the jobs of a level are seen.</summary>
/// <param name="Rate">m, one per fault.</param>
/// <param name="Lent">
/// β: exposure lent to each fault, so that the rate stands on κ pseudo-jobs of machines that could have it; infinite for a rate that is exactly
/// known, 0 where no job of the level could have met the fault.
/// </param>
internal sealed record RatePrior(double[] Rate, double[] Lent)
{
    Rates? Above { get; init; }

    double Kappa { get; init; }

    /// <summary>A level leans on the one above with κ pseudo-jobs.</summary>
    internal static RatePrior Below(Rates above, CauseCounts counts, double kappa, IReadOnlyList<ScopeFaults> scopes)
    {
        double[] sums = [.. scopes.Select((scope, s) => counts.Jobs[s] > 0 ? scope.Sum(above.Rate) : 0)];
        double[] scale = ScopeFaults.Means(above.Rate.Length, scopes, sums, counts.Jobs);
        return new(above.Rate, [.. above.Prior.Lent.Select((lent, f) => double.IsPositiveInfinity(lent) ? lent : scale[f] == 0 ? 0 : kappa / scale[f])])
        {
            Above = above,
            Kappa = kappa,
        };
    }

    internal double Updated(int fault, double had, double exposure) =>
        double.IsPositiveInfinity(Lent[fault]) || Lent[fault] + exposure == 0 ? Rate[fault] : (Lent[fault] * Rate[fault] + had) / (Lent[fault] + exposure);

    /// <summary>Jobs behind each share of a scope: exposure × Λ; below the top by the law of total variance, as in <see cref="Distribution.Child"/>.</summary>
    internal double[] Weights(ScopeFaults scope, double[] exposure, double sum)
    {
        double[]? above = Above?.Weights(scope);
        return [.. scope.Faults.Select((f, i) => above is null ? (Lent[f] + exposure[f]) * sum : Child(above[i], f))];

        double Child(double weight, int fault)
        {
            double lent = Lent[fault] == 0 ? Kappa : Lent[fault] * sum;
            if (double.IsPositiveInfinity(lent)) return weight;
            double own = lent + exposure[fault] * sum;
            double fromAbove = Math.Pow(lent / own, 2) / (weight + 1);
            return 1 / ((1 - fromAbove) / (own + 1) + fromAbove) - 1;
        }
    }
}
