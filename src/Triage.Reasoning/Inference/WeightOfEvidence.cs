using System.Collections.Immutable;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Inference;

/// <summary>How much one piece of evidence speaks for or against each cause.</summary>
/// <param name="Item">The piece.</param>
/// <param name="States">Decibans per root and state (at the start); the same shape as <see cref="Posterior.Marginals"/>.</param>
/// <param name="Faults">Decibans per fault id.</param>
public sealed record ItemWeight(EvidenceItem Item, ImmutableArray<ImmutableArray<double>> States, IReadOnlyDictionary<string, double> Faults);

/// <summary>Good's weight of evidence (Good 1950, Probability and the Weighing of Evidence).</summary>
public static class WeightOfEvidence
{
    /// <summary>
    /// For every piece of evidence 10 · log10 of the odds with everything over the odds with everything but that piece, on the full
    /// model: decibans. Plus or minus infinity where the piece alone decides; not a number where the odds were 0 or infinite before.
    /// </summary>
    /// <exception cref="ArgumentException">The input makes no sense, or the evidence contradicts itself.</exception>
    public static ImmutableArray<ItemWeight> Of(Network network, Evidence evidence)
    {
        InputCheck.Require(network, evidence);
        var with = CourseMarginals.AtStart(network, evidence, [])
            ?? throw new ArgumentException("The evidence contradicts itself: correct or leave out what the posterior names as its conflict.");
        var items = EvidenceItems.Of(network, evidence);
        var places = new FaultPlaces(network);
        var faults = places.Chances(with);
        var weights = new ItemWeight[items.Length];
        Parallel.For(0, items.Length, i =>
        {
            var without = CourseMarginals.AtStart(network, evidence, [items[i]])!.Value;
            weights[i] = new(items[i], States(with, without), Faults(places, faults, places.Chances(without)));
        });
        return [.. weights];
    }

    private static ImmutableArray<ImmutableArray<double>> States(ImmutableArray<ImmutableArray<double>> with, ImmutableArray<ImmutableArray<double>> without) =>
        [.. with.Zip(without, (a, b) => a.Select((_, s) => Decibans(Odds(a, s), Odds(b, s))).ToImmutableArray())];

    private static Dictionary<string, double> Faults(FaultPlaces places, FaultChance[] with, FaultChance[] without)
    {
        var weights = new Dictionary<string, double>(places.Count, StringComparer.Ordinal);
        for (var f = 0; f < places.Count; f++)
        {
            weights.Add(places[f], Decibans(with[f].Odds, without[f].Odds));
        }

        return weights;
    }

    private static double Decibans(double with, double without) => 10 * (Math.Log10(with) - Math.Log10(without));

    /// <summary>The complement is summed, not subtracted.</summary>
    private static double Odds(ImmutableArray<double> row, int state)
    {
        var others = 0.0;
        for (var s = 0; s < row.Length; s++)
        {
            others += s == state ? 0 : row[s];
        }

        return row[state] / others;
    }
}
