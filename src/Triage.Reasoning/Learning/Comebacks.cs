namespace Triage.Reasoning.Learning;

/// <summary>
/// Mixture cure (Boag 1949; Berkson and Gage 1952): what was done is a cure with the chance that it holds; what is not cured comes
/// back after exponentially distributed days. One mean serves all actions, since each has few comebacks. A unit that nobody heard of
/// again says nothing, so those heard of are taken to be like the others.
/// </summary>
/// <param name="MeanDays">Mean days until what is not cured is back.</param>
public sealed record Comebacks(double MeanDays)
{
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

    /// <summary>One step of expectation–maximisation for the mean: comebacks with their days, and days that those not cured were quiet.</summary>
    internal Comebacks Refitted(IReadOnlyList<JobRecord> jobs, Estimates believed, Estimate prior)
    {
        double days = prior.Mean * prior.Weight, back = prior.Weight;
        foreach (JobRecord job in jobs)
            foreach (TriedAction tried in job.Tried.Where(tried => tried is { Works: true, QuietDays: > 0 }).DistinctBy(tried => tried.Action))
                foreach (JobCause cause in job.Causes)
                {
                    if (tried.Held == true || believed.Holds(tried.Action, cause.Fault) is not { } holds) continue;
                    double weight = job.Weight * cause.Chance * (tried.Held is null ? 1 - Fixed(holds.Mean, tried.QuietDays) : 1);
                    days += weight * tried.QuietDays;
                    if (tried.Held == false) back += weight;
                }
        return new(days / back);
    }
}
