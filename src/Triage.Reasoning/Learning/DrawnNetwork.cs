using System.Collections.Immutable;
using MathNet.Numerics.Distributions;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Learning;

/// <summary>A network whose numbers are drawn from what is known of them: priors, and the findings that were looked at.</summary>
internal sealed class DrawnNetwork(Network network, Evidence evidence)
{
    // what a Gamma draw of a tiny shape rounds to must not make evidence impossible
    const double Rarest = 1e-12;

    readonly int[] seen = [.. evidence.Observations.Select(o => o.Finding).Distinct()];

    internal Network Draw(Random random)
    {
        var findings = network.Findings.ToBuilder();
        foreach (int f in seen) findings[f] = Finding(findings[f], random);
        return network with
        {
            Roots = [.. network.Roots.Select(root => root.PriorWeight.IsDefaultOrEmpty ? root : root with { Prior = Prior(root, random) })],
            Findings = findings.ToImmutable(),
        };
    }

    /// <summary>Links of one root that share their distribution are one number: a part of a compound root in several combinations.</summary>
    static Finding Finding(Finding finding, Random random)
    {
        var drawn = new Dictionary<(int Root, ImmutableArray<double> Produces), ImmutableArray<double>>();
        foreach (Link link in finding.Links)
            if (!drawn.ContainsKey((link.Root, link.Produces))) drawn[(link.Root, link.Produces)] = Distribution(link.Produces, link.Weight, random);
        return finding with
        {
            Ambient = Distribution(finding.Ambient, finding.AmbientWeight, random),
            Links = [.. finding.Links.Select(link => link with { Produces = drawn[(link.Root, link.Produces)] })],
        };
    }

    /// <summary>Every fault state by its own Beta; the good state has the rest.</summary>
    static ImmutableArray<double> Prior(Root root, Random random)
    {
        double[] faulty = [.. root.Prior.Skip(1).Select((p, s) => p is <= 0 or >= 1 ? p : Distribution([p, 1 - p], root.PriorWeight[s + 1], random)[0])];
        double sum = faulty.Sum();
        double good = root.Prior[0] > 0 ? Math.Max(Rarest, 1 - sum) : 0;
        return good + sum > 0 ? [good / (good + sum), .. faulty.Select(p => p / (good + sum))] : root.Prior;
    }

    static ImmutableArray<double> Distribution(ImmutableArray<double> mean, double weight, Random random)
    {
        if (double.IsPositiveInfinity(weight) || weight <= 0) return mean;
        double[] gammas = [.. mean.Select(m => m <= 0 ? 0 : Math.Max(Rarest, Gamma.Sample(random, m * weight, 1)))];
        double sum = gammas.Sum();
        return [.. gammas.Select(g => g / sum)];
    }
}
