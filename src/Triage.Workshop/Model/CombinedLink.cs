using System.Collections.Immutable;
using Triage.Reasoning.Networks;

namespace Triage.Workshop.Model;

/// <summary>The link of a root state that stands for several faults at once.</summary>
internal static class CombinedLink
{
    /// <summary>Noisy-MAX: the cumulative of a combination is the product of the cumulatives of its faults; nominal: the mean.</summary>
    public static Link Of((int Root, int State) place, ImmutableArray<string> faults, Dictionary<string, LinkOfNotes> links, bool nominal)
    {
        var parts = faults.Where(links.ContainsKey).Select(f => links[f]).ToList();
        var produces = parts.Count == 1 ? parts[0].Produces : nominal ? Mean(parts) : Largest(parts);
        return new(place.Root, place.State, produces)
        {
            Weight = parts.Min(p => p.Weight),
            When = parts.Any(p => p.When == Conditions.None) ? Conditions.None : parts.Aggregate(Conditions.None, (all, p) => all | p.When),
            EveryMinutes = parts.Any(p => p.EveryMinutes is null) ? null : parts.Min(p => p.EveryMinutes),
        };
    }

    private static ImmutableArray<double> Mean(List<LinkOfNotes> parts) =>
        [.. Enumerable.Range(0, parts[0].Produces.Length).Select(v => parts.Average(p => p.Produces[v]))];

    private static ImmutableArray<double> Largest(List<LinkOfNotes> parts)
    {
        var values = parts[0].Produces.Length;
        var cumulative = Enumerable.Range(0, values).Select(v => parts.Aggregate(1.0, (c, p) => c * p.Produces.Take(v + 1).Sum())).ToArray();
        cumulative[^1] = 1;
        return [.. cumulative.Select((c, v) => Math.Max(0, v == 0 ? c : c - cumulative[v - 1]))];
    }
}
