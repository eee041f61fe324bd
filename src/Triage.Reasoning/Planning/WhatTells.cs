using System.Collections.Immutable;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Planning;

/// <summary>What looking at something would tell, whatever it costs and saves.</summary>
public static class WhatTells
{
    /// <summary>Expected drop of entropy over the hypotheses, in bits (Shannon 1948).</summary>
    /// <param name="belief">Probabilities of sets of faults; scaled to sum to 1.</param>
    public static double Bits(ImmutableArray<Hypothesis> belief, Finding finding)
    {
        var space = new BeliefSpace(new() { Belief = belief, Options = [], Rates = new(0, 0) });
        return InformationGain.Bits(space.Likelihood(finding, space.SetsWith()), space.Prior);
    }
}
