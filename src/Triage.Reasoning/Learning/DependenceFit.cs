namespace Triage.Reasoning.Learning;

/// <summary>
/// Chooses κ and reach by tenfold cross-validation of the log score: of those within one standard error of the best, the ones that lean
/// most on independence, and of these the best (the one-standard-error rule of Breiman, Friedman, Olshen and Stone 1984).
/// </summary>
internal static class DependenceFit
{
    const int Folds = 10;
    static readonly double[] Kappas = [1, 2, 4];
    static readonly double[] Reaches = [double.PositiveInfinity, 50, 35, 25];

    static readonly Dependence[] Candidates = [.. Kappas.SelectMany(kappa => Reaches.Select(reach => new Dependence(kappa, reach)))];

    internal static Dependence Best(ValueNumbers numbers, LinksOfCauses links, double[] shares, SoleCause[] cases)
    {
        if (cases.Length < Folds) return new(Kappas[^1], Reaches[0]);
        int[] fold = Stratified(cases);
        var all = new JointCounts(shares.Length, numbers.Count, cases);
        double[][] losses = [.. Candidates.Select(_ => new double[cases.Length])];
        for (int f = 0; f < Folds; f++)
        {
            var outside = new JointCounts(shares.Length, numbers.Count, cases.Where((_, i) => fold[i] != f));
            double[][] without = links.Without(numbers, all, outside);
            foreach (double kappa in Kappas)
                Score(new(numbers, without, outside, kappa), kappa, f);
        }
        return Choose(losses);

        void Score(OneDependence likelihood, double kappa, int f)
        {
            for (int i = 0; i < cases.Length; i++)
            {
                if (fold[i] != f) continue;
                double[] log = likelihood.LogLikelihoods(cases[i].Values);
                for (int m = 0; m < Candidates.Length; m++)
                    if (Candidates[m].Kappa == kappa)
                        losses[m][i] = -cases[i].Weight * Math.Log(Math.Max(Candidates[m].Posterior(shares, log, cases[i].Values.Length)[cases[i].Cause], 1e-15));
            }
        }
    }

    static Dependence Choose(double[][] losses)
    {
        double[] best = losses.MinBy(each => each.Sum())!;
        double limit = best.Average() + Math.Sqrt(best.Sum(loss => Math.Pow(loss - best.Average(), 2)) / best.Length / (best.Length - 1));
        return Candidates[Enumerable.Range(0, losses.Length).Where(m => losses[m].Average() <= limit)
            .OrderByDescending(m => Candidates[m].Kappa).ThenBy(m => losses[m].Sum()).First()];
    }

    /// <summary>Every cause is dealt out over the folds in turn.</summary>
    static int[] Stratified(SoleCause[] cases)
    {
        var dealt = new Dictionary<int, int>();
        return [.. cases.Select(one => (dealt[one.Cause] = dealt.GetValueOrDefault(one.Cause, one.Cause) + 1) % Folds)];
    }
}
