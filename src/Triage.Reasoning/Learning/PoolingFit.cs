using System.Collections.Immutable;
using MathNet.Numerics;

namespace Triage.Reasoning.Learning;

/// <summary>
/// Fits κ of each step to its posterior: Dirichlet–multinomial marginal likelihood (Gelman et al., Bayesian Data
/// Analysis, chapter 5; Minka 2000) times a log-normal prior, on a grid of half octaves, from the most general step down.
/// </summary>
internal sealed class PoolingFit
{
    const int Sweeps = 2;

    readonly Estimates start;
    readonly LearnerSettings settings;
    readonly SortedDictionary<string, ImmutableArray<string>> paths = new(StringComparer.Ordinal);
    readonly ImmutableArray<TallyKey> links;

    PoolingFit(Estimates start, IEnumerable<JobRecord> jobs, LearnerSettings settings)
    {
        (this.start, this.settings) = (start, settings);
        foreach (ImmutableArray<string> levels in jobs.Select(job => job.Levels))
            for (int i = 0; i < levels.Length; i++) paths[levels[i]] = levels[i..];
        links = [.. start.Tally.Keys.Where(key => key.Sum == Sum.Link).Select(key => key with { Value = "" }).Distinct()
            .Where(key => start.Known.Finding(key.Finding) is not null)
            .OrderBy(key => key.At, StringComparer.Ordinal).ThenBy(key => key.Subject, StringComparer.Ordinal).ThenBy(key => key.Finding, StringComparer.Ordinal)];
    }

    internal static Pooling Fit(Estimates start, IEnumerable<JobRecord> jobs, LearnerSettings settings)
    {
        if (settings.PoolingSpread == 0) return settings.Pooling;
        var fit = new PoolingFit(start, jobs, settings);
        Pooling pooling = fit.Ambient(settings.Pooling);
        // what lower steps tell upper ones depends on their own κ
        for (int sweep = 0; sweep < Sweeps; sweep++) pooling = fit.Links(fit.Shares(pooling));
        return pooling;
    }

    Pooling Ambient(Pooling pooling) => pooling with
    {
        Ambient = Best(Median.Ambient, start.Known.Knowledge.Findings.Select(finding =>
            new Sample(start.AmbientCounts(finding), finding.Ambient, finding.AmbientWeight))),
    };

    Pooling Shares(Pooling pooling)
    {
        pooling = pooling with { ShareNotes = Best(Median.ShareNotes, [Everywhere(With(pooling).Shares.CountsAt([]))]) };
        for (int depth = 0; depth < pooling.ShareLevels.Length; depth++)
        {
            SharesOfCauses shares = With(pooling).Shares;
            var samples = Paths(depth).Select(path => Member(shares, path));
            pooling = pooling with { ShareLevels = pooling.ShareLevels.SetItem(depth, Best(Median.ShareLevels[depth], samples)) };
        }
        return pooling;
    }

    /// <summary>The notes' pseudo-jobs stand behind each sort of machine: where sorts share no fault, there are as many times κ of them.</summary>
    Sample Everywhere(CauseCounts counts)
    {
        NotedRates noted = start.Known.NotedRates;
        double[] mean = Means(Rates.Fit(noted.Prior(double.PositiveInfinity), counts.Nothing, start.Known.Scopes), counts);
        double[] sorts = [.. noted.Scale.Select((sum, f) => sum > 0 && mean[f] > 0 ? noted.Rate[f] / sum : 0)];
        return new(counts.Had, [.. mean], sorts.Select((sort, f) => sort > 0 ? sort * noted.Jobs[f] : 0).Sum() / sorts.Sum()) { Times = sorts.Sum() };
    }

    /// <summary>Among the faults that other members have met too: of the rest nobody can say how much members differ.</summary>
    Sample? Member(SharesOfCauses shares, ImmutableArray<string> path)
    {
        if (shares.AboveWithout(path) is not { } above) return null;
        CauseCounts counts = shares.CountsAt(path);
        double[] means = [.. Means(above, counts).Select((mean, f) => above.Met(f) ? mean : 0)];
        double part = means.Sum();
        return part == 0 ? null : new(counts.Had, [.. means.Select(mean => mean / part)], double.PositiveInfinity) { Times = part };
    }

    double[] Means(Rates rates, CauseCounts counts)
    {
        double jobs = counts.Jobs.Sum();
        return [.. rates.Expected(start.Known.Scopes, counts.Jobs).Select(expected => jobs > 0 ? expected / jobs : 0)];
    }

    Pooling Links(Pooling pooling)
    {
        Estimates estimates = With(pooling);
        var everywhere = links.Where(link => link.At == TallyKey.Everywhere).ToLookup(link => start.Known.Link(link.Subject, link.Finding) is not null);
        pooling = pooling with
        {
            LinkNotes = Best(Median.LinkNotes, everywhere[true].Select(link => Everywhere(estimates, link))),
            LinkUnnoted = Best(Median.LinkUnnoted, everywhere[false].Select(link => Everywhere(estimates, link))),
        };
        Estimates noted = With(pooling);
        pooling = pooling with
        {
            LinkGroup = Best(Median.LinkGroup, everywhere.SelectMany(each => each)
                .Where(link => start.Known.Fault(link.Subject)?.Group is not null).Select(link => Member(Chain(noted, link, [])))),
        };
        ILookup<string, TallyKey> byLevel = links.ToLookup(link => link.At);
        for (int depth = 0; depth < pooling.LinkLevels.Length; depth++)
        {
            Estimates above = With(pooling);
            var samples = Paths(depth).SelectMany(path => byLevel[path[0]].Select(link => Member(Chain(above, link, path))));
            pooling = pooling with { LinkLevels = pooling.LinkLevels.SetItem(depth, Best(Median.LinkLevels[depth], samples)) };
        }
        return pooling;
    }

    Sample? Everywhere(Estimates estimates, TallyKey link)
    {
        KnownFinding finding = start.Known.NeededFinding(link.Finding);
        double most = start.Known.Link(link.Subject, link.Finding)?.Weight ?? double.PositiveInfinity;
        Hierarchy chain = Chain(estimates, link, []);
        return new(chain.Steps.Count > 0 ? chain.Steps[0].Counts : chain.First, estimates.LinkPrior(link.Subject, finding).Mean, most);
    }

    static Hierarchy Chain(Estimates estimates, TallyKey link, ImmutableArray<string> path) => estimates.LinkChain(link.Subject, link.Finding, path)!;

    static Sample? Member(Hierarchy chain) => chain.Steps.Count > 0 && chain.AboveWithoutLast() is { } above
        ? new(chain.Steps[^1].Counts, above.Mean, double.PositiveInfinity)
        : null;

    Pooling Median => settings.Pooling;

    Estimates With(Pooling pooling) => new(start.Known, start.Tally, pooling, start.Comebacks, settings);

    /// <summary>Chains of levels whose most special one is this far below the top.</summary>
    IEnumerable<ImmutableArray<string>> Paths(int depth) => paths.Values.Where(path => path.Length == depth + 1);

    /// <summary>
    /// The κ whose spread, 1 / (κ + 1), is the posterior mean of the spread: what is not known of κ widens what hangs on it.
    /// </summary>
    double Best(double median, IEnumerable<Sample?> samples)
    {
        Sample[] known = [.. samples.OfType<Sample>().Where(sample => sample.Counts.Sum() > 0 && sample.Most > 0)];
        double[] kappas = [.. Enumerable.Range(-16, 33).Select(half => median * Math.Pow(2, half / 2.0))];
        double[] logs = [.. kappas.Select(kappa => known.Sum(sample => sample.LogLikelihood(kappa)) - Math.Pow(Math.Log(kappa / median) / settings.PoolingSpread, 2) / 2)];
        double[] weights = [.. logs.Select(log => Math.Exp(log - logs.Max()))];
        return weights.Sum() / weights.Zip(kappas, (weight, kappa) => weight / (kappa + 1)).Sum() - 1;
    }

    /// <summary>Counts of one member, the mean it is drawn around, and the most that κ may be there.</summary>
    sealed record Sample(double[] Counts, ImmutableArray<double> Mean, double Most)
    {
        /// <summary>How many times κ stands behind it.</summary>
        internal double Times { get; init; } = 1;

        internal double LogLikelihood(double kappa)
        {
            double k = Times * Math.Min(kappa, Most);
            double seen = 0, sum = 0;
            for (int i = 0; i < Counts.Length; i++)
            {
                if (Counts[i] == 0 || Mean[i] == 0) continue;
                seen += Counts[i];
                sum += SpecialFunctions.GammaLn(Counts[i] + k * Mean[i]) - SpecialFunctions.GammaLn(k * Mean[i]);
            }
            return sum + SpecialFunctions.GammaLn(k) - SpecialFunctions.GammaLn(seen + k);
        }
    }
}
