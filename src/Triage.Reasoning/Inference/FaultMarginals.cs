using System.Collections.Immutable;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Inference;

/// <summary>How likely one fault is.</summary>
/// <param name="Probability">P(present).</param>
/// <param name="Absent">P(absent), summed by itself, not subtracted.</param>
public readonly record struct FaultChance(double Probability, double Absent)
{
    public double Odds => Probability / Absent;
}

/// <summary>Probabilities by fault id, which may sit in several states of a compound root.</summary>
public static class FaultMarginals
{
    /// <summary>P(fault was there at the start | evidence). Empty when contradictory.</summary>
    public static ImmutableDictionary<string, FaultChance> AtStart(Network network, Posterior posterior) => Sum(network, posterior.Marginals);

    /// <summary>P(fault is still there after all actions | evidence). Empty when contradictory.</summary>
    public static ImmutableDictionary<string, FaultChance> Remaining(Network network, Posterior posterior) => Sum(network, posterior.Remaining);

    private static ImmutableDictionary<string, FaultChance> Sum(Network network, ImmutableArray<ImmutableArray<double>> marginals)
    {
        var places = new FaultPlaces(network);
        return places.Chances(marginals).Select((chance, f) => KeyValuePair.Create(places[f], chance)).ToImmutableDictionary();
    }
}
