using System.Collections.Immutable;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Inference;

/// <summary>Which root state it is, given the evidence and that exactly one of the named ones is present and nothing else is wrong.</summary>
public static class ExactlyOne
{
    /// <summary>
    /// Bayes' rule over single faults: prior odds of each state against its root being good, times the probability of the evidence
    /// when only that state is present. Probabilities in the order of <paramref name="candidates"/>, summing to 1; empty when the
    /// evidence is impossible under every one.
    /// </summary>
    public static ImmutableArray<double> Of(Network network, Evidence evidence, IReadOnlyList<FaultyRoot> candidates)
    {
        var logs = candidates.Select(c => Math.Log(network.Roots[c.Root].Prior[c.State] / network.Roots[c.Root].Prior[0]) + LogEvidence(network, evidence, c)).ToArray();
        var most = logs.DefaultIfEmpty(double.NegativeInfinity).Max();
        if (double.IsNegativeInfinity(most))
            return [];
        var weights = logs.Select(l => Math.Exp(l - most)).ToArray();
        var total = weights.Sum();
        return [.. weights.Select(w => w / total)];
    }

    private static double LogEvidence(Network network, Evidence evidence, FaultyRoot only)
    {
        var roots = network.Roots.Select((root, r) => root with { Prior = Certain(root.Prior.Length, r == only.Root ? only.State : 0) });
        return PosteriorInference.Of(network with { Roots = [.. roots], SomethingIsWrong = false }, evidence).LogEvidence;
    }

    private static ImmutableArray<double> Certain(int states, int state) => [.. Enumerable.Range(0, states).Select(s => s == state ? 1.0 : 0)];
}
