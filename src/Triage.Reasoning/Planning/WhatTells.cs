using System.Collections.Immutable;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Planning;

/// <summary>What looking at something would tell, whatever it costs and saves.</summary>
public static class WhatTells
{
    /// <summary>Expected drop of entropy over the hypotheses, in bits (Shannon 1948): for each finding, of that one alone.</summary>
    /// <param name="belief">Probabilities of sets of faults; scaled to sum to 1.</param>
    public static ImmutableArray<double> Bits(ImmutableArray<Hypothesis> belief, IEnumerable<Finding> findings)
    {
        var space = new BeliefSpace(new() { Belief = belief, Options = [], Rates = new(0, 0) });
        var setsWith = space.SetsWith();
        return [.. findings.Select(finding => InformationGain.Bits(space.Likelihood(finding, setsWith), space.Prior))];
    }
}
