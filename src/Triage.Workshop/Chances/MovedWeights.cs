using System.Collections.Immutable;
using Triage.Reasoning.Inference;
using Triage.Workshop.Model;

namespace Triage.Workshop.Chances;

/// <summary>
/// Weights of evidence (Good 1950) where findings weigh otherwise than in the network: each observation and reading left out and in on the
/// moved chances. Outcomes of actions keep their weight in the network.
/// </summary>
internal static class MovedWeights
{
    /// <summary>What a double can tell from certain.</summary>
    private const double Surest = 1e-15;

    public static ImmutableArray<ItemWeight> Of(Reasoned reasoned)
    {
        var (network, evidence) = (reasoned.Network.Network, reasoned.Evidence.Evidence);
        if (!reasoned.IsMoved)
            return WeightOfEvidence.Of(network, evidence);
        var actions = evidence.Actions.IsEmpty ? [] : WeightOfEvidence.Of(network, evidence).Where(w => w.Item.Kind is EvidenceKind.Outcome or EvidenceKind.Held);
        return [.. Pieces(reasoned.Evidence).AsParallel().AsOrdered().Select(p => Compare(p.Item, reasoned, reasoned.With(p.Without))), .. actions];
    }

    private static IEnumerable<(EvidenceItem Item, JobEvidence Without)> Pieces(JobEvidence all)
    {
        var evidence = all.Evidence;
        for (var i = 0; i < evidence.Observations.Length; i++)
            yield return (new(EvidenceKind.Observation, i), all with { Evidence = evidence with { Observations = evidence.Observations.RemoveAt(i) }, ObservedIn = all.ObservedIn.RemoveAt(i) });
        for (var i = 0; i < evidence.Likelihoods.Length; i++)
            yield return (new(EvidenceKind.Likelihood, i), all with { Evidence = evidence with { Likelihoods = evidence.Likelihoods.RemoveAt(i) }, MeasuredIn = all.MeasuredIn.RemoveAt(i) });
    }

    private static ItemWeight Compare(EvidenceItem item, Reasoned with, Reasoned without) => new(
        item,
        [.. with.Posterior.Marginals.Select((row, r) => row.Select((p, s) => Decibans(p, without.Posterior.Marginals[r][s])).ToImmutableArray())],
        with.Network.Faults.Keys.ToImmutableDictionary(f => f, f => Decibans(with.AtFirst(f), without.AtFirst(f))));

    private static double Decibans(double with, double without) => 10 * (Math.Log10(Odds(with)) - Math.Log10(Odds(without)));

    private static double Odds(double p) => p / Math.Max(Surest, 1 - p);
}
