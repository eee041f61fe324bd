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

    /// <summary>A fault id in several roots counts as present when it is present in any; roots are then taken as independent.</summary>
    internal static ImmutableDictionary<string, FaultChance> Sum(Network network, ImmutableArray<ImmutableArray<double>> marginals)
    {
        var chances = new Dictionary<string, FaultChance>();
        for (var r = 0; r < marginals.Length; r++)
        {
            var row = marginals[r];
            var states = network.Roots[r].States;
            foreach (var fault in states.SelectMany(s => s.Faults).Distinct())
            {
                var present = states.Select((s, i) => s.Faults.Contains(fault) ? row[i] : 0).Sum();
                var absent = states.Select((s, i) => s.Faults.Contains(fault) ? 0 : row[i]).Sum();
                var other = chances.GetValueOrDefault(fault, new FaultChance(0, 1));
                chances[fault] = new(other.Probability + other.Absent * present, other.Absent * absent);
            }
        }

        return chances.ToImmutableDictionary();
    }
}
