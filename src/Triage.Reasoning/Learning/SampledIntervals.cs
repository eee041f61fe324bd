using System.Collections.Immutable;
using MathNet.Numerics.Distributions;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Learning;

/// <summary>
/// Intervals of posterior probabilities by seeded sampling: numbers of the network are drawn from what is known of them, each draw counts by
/// how well it foretells the evidence (importance sampling; Gelman et al., Bayesian Data Analysis, 10.4). Slower than the delta method
/// by the number of draws, and right where a chance has hardly any count behind it.
/// </summary>
public static class SampledIntervals
{
    // what a Gamma draw of a tiny shape rounds to must not make evidence impossible
    const double Rarest = 1e-12;

    /// <param name="network">With the weights behind its numbers; what has none counts as exactly known.</param>
    /// <param name="evidence">Of one unit.</param>
    /// <param name="seed">Equal seeds give equal intervals.</param>
    /// <param name="draws">At least 1; each costs one posterior.</param>
    /// <param name="level">Coverage, above 0 and below 1.</param>
    /// <returns>Per fault id.</returns>
    /// <exception cref="ArgumentException">The input makes no sense, or no draw allows the evidence.</exception>
    public static ImmutableDictionary<string, Interval> Of(Network network, Evidence evidence, int seed, int draws = 200, double level = 0.9)
    {
        if (draws < 1) throw new ArgumentException($"Give at least 1 draw, not {draws}.");
        if (level is not (> 0 and < 1)) throw new ArgumentException($"An interval needs a level between 0 and 1, not {level}.");
        var random = new Random(seed);
        Posterior[] drawn = [.. Enumerable.Range(0, draws).Select(_ => PosteriorInference.Of(Drawn(network, random), evidence)).Where(p => !p.Contradiction)];
        if (drawn.Length == 0) throw new ArgumentException("The evidence contradicts itself: correct or leave out what the posterior names as its conflict.");
        double most = drawn.Max(p => p.LogEvidenceAsConditioned);
        double[] weights = [.. drawn.Select(p => Math.Exp(p.LogEvidenceAsConditioned - most))];
        return network.Roots.SelectMany(root => root.States.SelectMany(state => state.Faults)).Distinct()
            .ToImmutableDictionary(fault => fault, fault => Shortest([.. drawn.Select((p, i) => (Chance(network, p, fault), weights[i]))], level * weights.Sum()));
    }

    /// <summary>
    /// The shortest interval with that much weight, an estimate of highest density (Chen and Shao 1999); one that begins with the smallest
    /// draw begins at 0, one that ends with the largest ends at 1.
    /// </summary>
    static Interval Shortest((double Chance, double Weight)[] draws, double weight)
    {
        (double Chance, double Weight)[] sorted = [.. draws.OrderBy(draw => draw.Chance)];
        var best = (First: 0, Last: sorted.Length - 1);
        double inside = 0;
        for (int first = 0, last = -1; ; inside -= sorted[first++].Weight)
        {
            while (inside < weight && last + 1 < sorted.Length) inside += sorted[++last].Weight;
            if (inside < weight) break;
            if (sorted[last].Chance - sorted[first].Chance < sorted[best.Last].Chance - sorted[best.First].Chance) best = (first, last);
        }
        return new(best.First == 0 ? 0 : sorted[best.First].Chance, best.Last == sorted.Length - 1 ? 1 : sorted[best.Last].Chance);
    }

    static double Chance(Network network, Posterior posterior, string fault) =>
        network.Roots.SelectMany((root, r) => root.States.Select((state, s) => state.Faults.Contains(fault) ? posterior.Marginals[r][s] : 0)).Sum();

    static Network Drawn(Network network, Random random) => network with
    {
        Roots = [.. network.Roots.Select(root => root.PriorWeight.IsDefaultOrEmpty ? root : root with { Prior = Prior(root, random) })],
        Findings =
        [
            .. network.Findings.Select(finding => finding with
            {
                Ambient = Draw(finding.Ambient, finding.AmbientWeight, random),
                Links = [.. finding.Links.Select(link => link with { Produces = Draw(link.Produces, link.Weight, random) })],
            }),
        ],
    };

    /// <summary>Every fault state by its own Beta; the good state has the rest.</summary>
    static ImmutableArray<double> Prior(Root root, Random random)
    {
        double[] faulty = [.. root.Prior.Skip(1).Select((p, s) => p <= 0 ? 0 : Draw([p, 1 - p], root.PriorWeight[s + 1], random)[0])];
        double sum = faulty.Sum();
        return sum < 1 ? [1 - sum, .. faulty] : [Rarest, .. faulty.Select(p => p / sum * (1 - Rarest))];
    }

    static ImmutableArray<double> Draw(ImmutableArray<double> mean, double weight, Random random)
    {
        if (double.IsPositiveInfinity(weight) || weight <= 0) return mean;
        double[] gammas = [.. mean.Select(m => m <= 0 ? 0 : Math.Max(Rarest, Gamma.Sample(random, m * weight, 1)))];
        double sum = gammas.Sum();
        return [.. gammas.Select(g => g / sum)];
    }
}
