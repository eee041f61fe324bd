using System.Collections.Immutable;

namespace Triage.Reasoning.Inference;

/// <summary>One way things can be now: the faults that remain, and how likely that is.</summary>
/// <param name="Probability">Posterior probability.</param>
/// <param name="Faulty">The (root, state) pairs that are still faulty after all actions; every other root is good or a bystander.</param>
public sealed record Hypothesis(double Probability, ImmutableArray<FaultyRoot> Faulty);

/// <summary>A root in a faulty state, by index.</summary>
public readonly record struct FaultyRoot(int Root, int State);

/// <summary>The likeliest hypotheses, and a rigorous bound on the rest.</summary>
/// <param name="Listed">Most probable first; probabilities are posterior and sum to at most 1.</param>
/// <param name="LeftOut">Upper bound on the posterior mass of all hypotheses that are not listed.</param>
public sealed record HypothesisSet(ImmutableArray<Hypothesis> Listed, double LeftOut);
