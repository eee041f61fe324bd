using System.Collections.Immutable;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Planning;
using Finding = Triage.Reasoning.Networks.Finding;

namespace Triage.Workshop.Model;

/// <summary>
/// Which of several questions or looks of a moment are worth making: not their minutes count, but whose patience they use up. The numbers were
/// chosen on the odd ones of the machines in tests/exam.
/// </summary>
internal static class WorthAsking
{
    /// <summary>What tells less than this, in bits, nobody asks.</summary>
    private const double LeastBits = 0.1;

    /// <summary>Nor what tells less than this share of what the best of them tells.</summary>
    private const double LeastShare = 0.25;

    /// <summary>Those that tell enough, with what each tells, in bits; in the order given.</summary>
    /// <param name="belief">Sets of faults.</param>
    public static ImmutableArray<(Finding Finding, double Bits)> Of(ImmutableArray<Hypothesis> belief, IReadOnlyCollection<Finding> looks)
    {
        var bits = WhatTells.Bits(belief, looks);
        var least = Math.Max(LeastBits, LeastShare * bits.DefaultIfEmpty(0).Max());
        return [.. looks.Zip(bits).Where(look => look.Second >= least)];
    }
}
