using System.Collections.Immutable;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Inference;

/// <summary>Where each fault of a network sits: several states of one root where it is a compound one. Looked up once, summed many times.</summary>
internal sealed class FaultPlaces
{
    private readonly List<(string Fault, int Root, bool[] Present)> _places = [];

    /// <exception cref="ArgumentException">A fault stands in two roots.</exception>
    public FaultPlaces(Network network)
    {
        var known = new HashSet<string>(StringComparer.Ordinal);
        for (var r = 0; r < network.Roots.Length; r++)
        {
            var states = network.Roots[r].States;
            foreach (var fault in states.SelectMany(s => s.Faults).Distinct())
            {
                if (!known.Add(fault))
                {
                    throw new ArgumentException($"Fault '{fault}' stands in two roots: tie them into one compound root.");
                }

                _places.Add((fault, r, [.. states.Select(s => s.Faults.Contains(fault))]));
            }
        }
    }

    public int Count => _places.Count;

    public string this[int fault] => _places[fault].Fault;

    /// <summary>One for each fault; none where the evidence is impossible.</summary>
    /// <param name="marginals">By root and state.</param>
    public FaultChance[] Chances(ImmutableArray<ImmutableArray<double>> marginals) =>
        marginals.IsEmpty ? [] : [.. _places.Select(place => Chance(marginals[place.Root], place.Present))];

    /// <summary>The complement is summed, not subtracted.</summary>
    private static FaultChance Chance(ImmutableArray<double> row, bool[] present)
    {
        var (with, without) = (0.0, 0.0);
        for (var s = 0; s < present.Length; s++)
        {
            if (present[s])
            {
                with += row[s];
            }
            else
            {
                without += row[s];
            }
        }

        return new(with, without);
    }
}
