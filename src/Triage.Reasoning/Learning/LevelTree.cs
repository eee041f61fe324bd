namespace Triage.Reasoning.Learning;

/// <summary>
/// Counts below a level, as they speak of that level's own mean. Members of a level differ, so n jobs of one member say less of the
/// mean of all than n jobs of n members: drawn around it with κ pseudo-jobs they count as n (κ + 1) / (n + κ), which gives the variance of
/// a Dirichlet–multinomial share, m (1 − m) (n + κ) / (n (κ + 1)) (Johnson, Kotz and Balakrishnan 1997, chapter 35).
/// </summary>
/// <param name="counts">What was counted at a level, everything below it included.</param>
internal sealed class LevelTree(Tally tally, Func<string, double[]> counts, IReadOnlyList<double> kappas)
{
    /// <param name="depth">0 for everywhere, one more for each level below.</param>
    internal double[] Effective(string level, int depth)
    {
        double[] effective = counts(level);
        if (effective.Sum() == 0) return effective;
        foreach (string member in tally.Below(level))
        {
            double[] own = counts(member);
            if (own.Sum() == 0) continue;
            double[] says = Told(Effective(member, depth + 1), Kappa(depth));
            for (int i = 0; i < own.Length; i++) effective[i] = Math.Max(0, effective[i] + says[i] - own[i]);
        }
        return effective;
    }

    /// <summary>Pseudo-jobs by which the level that far below the top leans on the one above it.</summary>
    internal double Kappa(int depth) => Pooling.At(kappas, depth);

    /// <summary>What a member's counts tell of the step above.</summary>
    internal static double[] Told(double[] counts, double kappa)
    {
        double seen = counts.Sum();
        return seen <= 1 || double.IsPositiveInfinity(kappa) ? counts : [.. counts.Select(count => count * (kappa + 1) / (seen + kappa))];
    }
}
