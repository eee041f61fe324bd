namespace Triage.Reasoning.Learning;

/// <summary>
/// Mixture cure (Boag 1949; Berkson and Gage 1952): what was done is a cure with the chance that it holds; what is not cured comes
/// back after exponentially distributed days. One mean serves all actions, since each has few comebacks. A unit that nobody heard of
/// again says nothing, so those heard of are taken to be like the others.
/// </summary>
/// <param name="MeanDays">Mean days until what is not cured is back.</param>
public sealed record Comebacks(double MeanDays)
{
    const int Rounds = 100;

    /// <summary>P(quiet this long | not cured).</summary>
    public double QuietThough(double days) => Math.Exp(-days / MeanDays);

    /// <summary>P(cured | quiet this long).</summary>
    /// <param name="holds">P(cured) beforehand, 0 … 1.</param>
    /// <param name="days">Until last heard from.</param>
    public double Fixed(double holds, double days) => holds == 0 ? 0 : holds / (holds + (1 - holds) * QuietThough(days));

    /// <summary>
    /// How many jobs known to hold a quiet one is worth: P(cured | quiet) (1 − P(quiet | not cured)). Its slope in the chance
    /// that it holds is that of ln(p + (1 − p) S), so that counting it until nothing changes finds the likeliest chance; 0 for no news.
    /// </summary>
    internal double Worth(double holds, double days) => Fixed(holds, days) * (1 - QuietThough(days));

    /// <summary>
    /// Expectation–maximisation over all actions that worked, with one chance of a cure for all: comebacks with their days, and quiet days
    /// until last heard from.
    /// </summary>
    /// <param name="prior">Mean days, and the comebacks behind them.</param>
    internal static Comebacks Fit(IEnumerable<JobRecord> jobs, Estimate prior)
    {
        (double Days, bool Back, double Weight)[] seen =
        [
            .. jobs.SelectMany(job => job.Tried.Where(tried => tried is { Works: true, Held: not true, QuietDays: > 0 }).DistinctBy(tried => tried.Action)
                .Select(tried => (tried.QuietDays, tried.Held == false, job.Weight))),
        ];
        double cured = 0.5, all = seen.Sum(one => one.Weight) + 1;
        var fitted = new Comebacks(prior.Mean);
        for (int round = 0; round < Rounds && seen.Length > 0; round++)
        {
            double days = prior.Mean * prior.Weight, back = prior.Weight, holds = 0.5;
            foreach (var one in seen)
            {
                double fix = one.Back ? 0 : fitted.Fixed(cured, one.Days);
                holds += one.Weight * fix;
                days += one.Weight * (1 - fix) * one.Days;
                if (one.Back) back += one.Weight;
            }
            (cured, fitted) = (holds / all, new(days / back));
        }
        return fitted;
    }
}
