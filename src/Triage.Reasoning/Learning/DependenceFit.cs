using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>
/// Chooses parents, κ and reach from the jobs of an epoch. The log score of every job is taken with that job left out of the counts (Stone 1974);
/// findings stay independent unless the best beats independence by more than a standard error, job by job (after Breiman,
/// Friedman, Olshen and Stone 1984).
/// </summary>
internal sealed class DependenceFit
{
    // jobs beyond these are passed over evenly: they would cost more than they tell
    const int MostJobs = 1000;
    const int FewestJobs = 30;
    static readonly double[] Kappas = [1, 4, 16];
    static readonly double[] Reaches = [double.PositiveInfinity, 50, 35, 25];
    static readonly (double Kappa, double Reach)[] Candidates = [.. Kappas.SelectMany(kappa => Reaches.Select(reach => (kappa, reach)))];

    readonly Estimates believed;
    readonly ImmutableArray<string> parents;
    readonly List<double> independent = [];
    readonly List<double>[] dependent = [.. Candidates.Select(_ => new List<double>())];

    DependenceFit(Estimates believed, ImmutableArray<string> parents) => (this.believed, this.parents) = (believed, parents);

    /// <param name="believed">What was learned from the same jobs.</param>
    internal static Dependence Best(Estimates believed, IReadOnlyList<JobRecord> jobs)
    {
        JobRecord[] sole = [.. jobs.Where(job => PairCredits.IsSole(job, believed.Known))];
        sole = [.. sole.Where((_, i) => i % (1 + sole.Length / MostJobs) == 0)];
        if (sole.Length < FewestJobs) return Dependence.None;
        var cases = sole.ToLookup(
            job => job.Levels.IsEmpty ? "" : job.Levels[^1],
            job => new SoleCause(job.Causes[0].Fault, PairCredits.Known(job, believed.Known), job.Weight));
        ImmutableArray<string> parents = ParentChoice.Of([.. cases.SelectMany(alike => alike)]);
        if (parents.IsEmpty) return Dependence.None;
        var fit = new DependenceFit(believed, parents);
        foreach (var alike in cases) fit.Score([.. alike], alike.Key.Length == 0 ? [] : [alike.Key]);
        return fit.Choose();
    }

    /// <summary>Jobs of one class of machines among the causes met there.</summary>
    void Score(SoleCause[] cases, ImmutableArray<string> levels)
    {
        ImmutableArray<string> causes = [.. cases.Select(one => one.Fault).Distinct().Order(StringComparer.Ordinal)];
        double[] logShares = [.. believed.Shares(causes, levels).Mean.Select(Math.Log)];
        var table = new PairTable(causes, cases, parents);
        LinkValue[][] links = [.. causes.Select(cause => table.Values.Select(value => LinkValue.Of(believed, cause, value, levels)).ToArray())];
        foreach (SoleCause one in cases)
        {
            int[] values = table.Of(one);
            int[] known = [.. Enumerable.Range(0, values.Length).Where(j => parents.Contains(one.Seen[j].Finding))];
            int truth = causes.IndexOf(one.Fault);
            double[][] alone = [.. links.Select((row, c) => values.Select(v => row[v].Without(c == truth ? one.Weight : 0)).ToArray())];
            independent.Add(Loss(one, logShares, [.. alone.Select(own => own.Sum(Math.Log))], truth, 1));
            foreach (double kappa in Kappas)
            {
                double[] logs = [.. alone.Select((own, c) => OneDependence.LogLikelihood(own, known, parents.Length, kappa,
                    (j, k) => table.Beside(c, values[j], values[k], c == truth ? one.Weight : 0)))];
                for (int m = 0; m < Candidates.Length; m++)
                    if (Candidates[m].Kappa == kappa)
                        dependent[m].Add(Loss(one, logShares, logs, truth, new Dependence(parents, kappa, Candidates[m].Reach).Temperature(values.Length)));
            }
        }
    }

    Dependence Choose()
    {
        int best = Enumerable.Range(0, Candidates.Length).MinBy(m => dependent[m].Sum());
        double[] gains = [.. independent.Zip(dependent[best], (a, b) => a - b)];
        return gains.Average() > StandardError(gains) ? new(parents, Candidates[best].Kappa, Candidates[best].Reach) : Dependence.None;
    }

    static double Loss(SoleCause one, double[] logShares, double[] logs, int truth, double temperature)
    {
        double[] scores = [.. logs.Zip(logShares, (log, share) => share + log / temperature)];
        double most = scores.Max();
        return -one.Weight * Math.Max(Math.Log(1e-15), scores[truth] - most - Math.Log(scores.Sum(score => Math.Exp(score - most))));
    }

    static double StandardError(double[] each)
    {
        double mean = each.Average();
        return Math.Sqrt(each.Sum(x => (x - mean) * (x - mean)) / (each.Length - 1) / each.Length);
    }
}

/// <summary>P(value | only this cause) with the jobs behind it, by which one of them can be left out.</summary>
internal readonly record struct LinkValue(double Chance, double Weight)
{
    // what no job and no note has is rare, not impossible
    const double Rarest = 1e-6;

    internal static LinkValue Of(Estimates estimates, string fault, CheckedFinding seen, ImmutableArray<string> levels)
    {
        Distribution link = estimates.Seen(fault, seen.Finding, levels) ?? estimates.Ambient(seen.Finding);
        return new(link.Mean[estimates.Known.NeededFinding(seen.Finding).Values.IndexOf(seen.Value)], link.Weight);
    }

    /// <summary>As if jobs of this weight that showed the value had not been counted: a Dirichlet gives back what it was given.</summary>
    internal double Without(double jobs) =>
        Math.Max(Rarest, jobs == 0 || double.IsPositiveInfinity(Weight) || Weight <= jobs ? Chance : (Chance * Weight - jobs) / (Weight - jobs));
}
