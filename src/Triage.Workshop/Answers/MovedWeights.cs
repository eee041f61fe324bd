using System.Collections.Immutable;
using Triage.Reasoning.Inference;

namespace Triage.Workshop.Answers;

/// <summary>
/// Weights of evidence where findings weigh otherwise than in the network: each observation and reading left out and in on the moved
/// chances. Outcomes of actions are not left out here and keep their weight in the network.
/// </summary>
internal static class MovedWeights
{
    /// <summary>What a double can tell from certain.</summary>
    private const double Surest = 1e-15;

    public static ImmutableArray<ItemWeight> Of(Reasoned reasoned, ImmutableArray<ItemWeight> weights) => reasoned.IsMoved
        ? [.. weights.AsParallel().AsOrdered().Select(w => Without(reasoned, w.Item) is { } without ? Compare(reasoned, without, w) : w)]
        : weights;

    private static Reasoned? Without(Reasoned reasoned, EvidenceItem item)
    {
        var all = reasoned.Evidence;
        return item.Kind switch
        {
            EvidenceKind.Observation => reasoned.With(all with
            {
                Evidence = all.Evidence with { Observations = all.Evidence.Observations.RemoveAt(item.Index) },
                ObservedIn = all.ObservedIn.RemoveAt(item.Index),
            }),
            EvidenceKind.Likelihood => reasoned.With(all with
            {
                Evidence = all.Evidence with { Likelihoods = all.Evidence.Likelihoods.RemoveAt(item.Index) },
                MeasuredIn = all.MeasuredIn.RemoveAt(item.Index),
            }),
            EvidenceKind.Outcome or EvidenceKind.Held or EvidenceKind.SomethingIsWrong => null,
        };
    }

    private static ItemWeight Compare(Reasoned with, Reasoned without, ItemWeight byNetwork) => byNetwork with
    {
        States = [.. with.Posterior.Marginals.Select((row, r) => row.Select((p, s) => Decibans(p, without.Posterior.Marginals[r][s])).ToImmutableArray())],
        Faults = byNetwork.Faults.ToImmutableDictionary(f => f.Key, f => Decibans(with.AtFirst(f.Key), without.AtFirst(f.Key))),
    };

    /// <summary>10 · log10 of the ratio of odds (Good 1950).</summary>
    private static double Decibans(double with, double without) => 10 * (Math.Log10(Odds(with)) - Math.Log10(Odds(without)));

    private static double Odds(double p) => p / Math.Max(Surest, 1 - p);
}
