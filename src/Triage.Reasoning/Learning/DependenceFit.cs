using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>
/// Chooses parents, κ and reach from the jobs of an epoch. The log score of every job is taken with that job left out of the counts (Stone 1974);
/// findings stay independent unless the best beats independence by more than a standard error, job by job (after Breiman,
/// Friedman, Olshen and Stone 1984).
/// </summary>
internal sealed class DependenceFit
{
    // jobs beyond these are passed over evenly: they would cost more than they tell; fewer with many causes, so that a fit takes about a second
    const int MostJobs = 1000;
    const int MostJobsTimesCauses = 40_000;
    const int FewestJobs = 30;

    // met in the class, but not known of this machine
    const double Rarest = 1e-6;
    static readonly double[] Kappas = [1, 4, 16];
    static readonly double[] Reaches = [double.PositiveInfinity, 50, 35, 25];
    static readonly (double Kappa, double Reach)[] Candidates = [.. Kappas.SelectMany(kappa => Reaches.Select(reach => (kappa, reach)))];

    readonly Estimates believed;
    readonly ImmutableArray<string> parents;
    readonly ImmutableArray<string> causes;
    readonly PairTable pairs;
    readonly List<double> independent = [];
    readonly List<double>[] dependent = [.. Candidates.Select(_ => new List<double>())];

    DependenceFit(Estimates believed, ImmutableArray<string> parents, SoleCause[] cases)
    {
        (this.believed, this.parents) = (believed, parents);
        causes = [.. cases.Select(one => one.Fault).Distinct().Order(StringComparer.Ordinal)];
        pairs = new(believed.Known, causes, cases, parents);
    }

    /// <param name="believed">What was learned from the same jobs.</param>
    internal static Dependence Best(Estimates believed, IReadOnlyList<JobRecord> jobs)
    {
        JobRecord[] sole = [.. jobs.Where(job => PairCredits.IsSole(job, believed.Known))];
        int most = Math.Clamp(MostJobsTimesCauses / Math.Max(1, sole.DistinctBy(job => job.Causes[0].Fault).Count()), FewestJobs, MostJobs);
        SoleCause[] cases =
        [
            .. sole.Where((_, i) => i % (1 + sole.Length / most) == 0)
                .Select(job => new SoleCause(job.Causes[0].Fault, PairCredits.Known(job, believed.Known), job.Weight) { Levels = job.Levels, Scope = job.Scope }),
        ];
        if (cases.Length < FewestJobs) return Dependence.None;
        ImmutableArray<string> parents = ParentChoice.Of(cases);
        if (parents.IsEmpty) return Dependence.None;
        var fit = new DependenceFit(believed, parents, cases);
        foreach (var alike in cases.GroupBy(one => one.Levels.LastOrDefault("")))
        {
            int[] met = [.. alike.Select(one => fit.causes.IndexOf(one.Fault)).Distinct().Order()];
            foreach (SoleCause one in alike) fit.Score(one, met);
        }
        return fit.Choose();
    }

    /// <summary>Among the causes met in the same class of machines.</summary>
    void Score(SoleCause one, int[] met)
    {
        ImmutableDictionary<string, Estimate> shares = believed.Shares.Of(believed.Known.Scope(one.Scope), one.Levels);
        double[] logShares = [.. met.Select(c => Math.Log(shares.TryGetValue(causes[c], out Estimate share) ? Math.Max(Rarest, share.Mean) : Rarest))];
        int truth = Array.IndexOf(met, causes.IndexOf(one.Fault));
        int[] known = [.. Enumerable.Range(0, one.Seen.Length).Where(j => parents.Contains(one.Seen[j].Finding))];
        int[] value = [.. one.Seen.Select(seen => believed.Known.NeededFinding(seen.Finding).Values.IndexOf(seen.Value))];
        double[][][]
            here = Rows(one, met),
            counted = [.. met.Select(c => one.Seen.Select(child => pairs.Alone(c, child, causes[c] == one.Fault ? one.Weight : 0)).ToArray())];
        double[][] alone = [.. here.Select(row => row.Select((chances, k) => chances[value[k]]).ToArray())];
        double[][][][] beside = [.. met.Select(c => known.Select(j => one.Seen.Select(child =>
            pairs.Beside(c, one.Seen[j], child, causes[c] == one.Fault ? one.Weight : 0)).ToArray()).ToArray())];
        independent.Add(Loss(one, logShares, [.. alone.Select(own => own.Sum(Math.Log))], truth, 1));
        foreach (double kappa in Kappas)
        {
            double[] logs = [.. alone.Select((own, c) => OneDependence.LogLikelihood(own, known, parents.Length,
                (j, k) => OneDependence.Conditional(here[c][k], counted[c][k], beside[c][Array.IndexOf(known, j)][k], kappa, value[k])))];
            for (int m = 0; m < Candidates.Length; m++)
                if (Candidates[m].Kappa == kappa)
                    dependent[m].Add(Loss(one, logShares, logs, truth, new Dependence(parents, kappa, Candidates[m].Reach).Temperature(one.Seen.Length)));
        }
    }

    /// <summary>P(value | only this cause) by cause and finding seen, with this job left out where it was counted.</summary>
    double[][][] Rows(SoleCause one, int[] met) => [.. met.Select(c => one.Seen.Select(seen =>
    {
        Distribution link = SeenAlone.Of(believed, causes[c], seen.Finding, one.Levels);
        return causes[c] == one.Fault
            ? SeenAlone.Without(link, believed.Known.NeededFinding(seen.Finding).Values.IndexOf(seen.Value), one.Weight)
            : SeenAlone.Chances(link);
    }).ToArray())];

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
