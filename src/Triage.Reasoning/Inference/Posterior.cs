using System.Collections.Immutable;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Inference;

/// <summary>The answer to "what is wrong, given what was seen".</summary>
public sealed record Posterior
{
    /// <summary>Natural logarithm of P(evidence), not conditioned on anything; negative infinity when impossible.</summary>
    public required double LogEvidence { get; init; }

    /// <summary>P(evidence), which may underflow to 0 where <see cref="LogEvidence"/> does not.</summary>
    public double EvidenceProbability => Math.Exp(LogEvidence);

    /// <summary>P(at least one root is not good), prior only.</summary>
    public required double PriorSomethingIsWrong { get; init; }

    /// <summary>
    /// Natural logarithm of P(evidence | something is wrong) where the network is conditioned on it, of P(evidence) otherwise.
    /// </summary>
    public required double LogEvidenceAsConditioned { get; init; }

    /// <summary>P(root is, at the start, in state | evidence): one row per root, one entry per state. Empty when contradictory.</summary>
    public required ImmutableArray<ImmutableArray<double>> Marginals { get; init; }

    /// <summary>P(root is now, after all actions, still faulty in state | evidence), same shape; entry 0 is "good or cleared".</summary>
    public required ImmutableArray<ImmutableArray<double>> Remaining { get; init; }

    /// <summary>True when the evidence cannot happen under the network; then <see cref="Conflict"/> says why.</summary>
    public required bool Contradiction { get; init; }

    /// <summary>A smallest set of pieces of evidence that cannot stand together; empty when there is no contradiction.</summary>
    public ImmutableArray<EvidenceItem> Conflict { get; init; } = [];

    /// <summary>
    /// Upper bound on the posterior mass that the marginals leave out; 0 when exact. What was left out may lie anywhere: the marginals
    /// are those of what was found, <see cref="BoundsOf"/> says what is certain, and <see cref="LogEvidence"/> is a lower bound.
    /// </summary>
    public double LeftOut { get; init; }

    /// <summary>Between what P(root was in state | evidence) lies for certain, whatever was left out; both ends the same when exact.</summary>
    public ChanceBounds BoundsOf(int root, int state)
    {
        var found = Marginals[root][state] * (1 - LeftOut);
        return new(found, Math.Min(1, found + LeftOut));
    }
}

/// <summary>A probability lies between these for certain; unlike an interval of belief, nothing is outside.</summary>
public readonly record struct ChanceBounds(double Lower, double Upper);

/// <summary>Points at one piece of evidence: an observation, a likelihood or an action's outcome, by its index in <see cref="Evidence"/>.</summary>
public readonly record struct EvidenceItem(EvidenceKind Kind, int Index);

public enum EvidenceKind
{
    Observation,
    Likelihood,
    Outcome,
    Held,

    /// <summary>The knowledge that something is wrong at all.</summary>
    SomethingIsWrong,
}
