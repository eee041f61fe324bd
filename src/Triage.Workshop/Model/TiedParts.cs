using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Workshop.Model;

/// <summary>Parts that damage ties together, causes before what follows from them.</summary>
/// <param name="Parts">In topological order.</param>
/// <param name="Follows">Which fault leads to which, within the group.</param>
internal sealed record TiedParts(ImmutableArray<FaultyPart> Parts, ImmutableArray<Follows> Follows)
{
    /// <summary>Combinations that one root may have; parts tied in greater numbers are reasoned about one by one.</summary>
    private const int MostCombinations = 512;

    public static IEnumerable<TiedParts> Group(List<FaultyPart> parts, ImmutableArray<Fault> faults)
    {
        var partOf = parts.SelectMany((p, i) => p.Modes.Select(m => (m.Fault, Part: i))).ToDictionary(p => p.Fault, p => p.Part, StringComparer.Ordinal);
        var follows = faults
            .SelectMany(f => f.LeadsTo.Where(l => partOf.ContainsKey(l.Fault)).Select(l => new Follows(f.Id, l.Fault, l.Chance.Probability)))
            .Where(l => partOf[l.From] != partOf[l.To])
            .ToList();
        var tables = faults.SelectMany(f => f.Given.SelectMany(row => row.Present).Where(partOf.ContainsKey).Select(parent => (From: partOf[parent], To: partOf[f.Id])));
        var edges = follows.Select(l => (From: partOf[l.From], To: partOf[l.To])).Concat(tables).Where(e => e.From != e.To).Distinct().ToList();
        return Components(parts.Count, edges).SelectMany<List<int>, TiedParts>(component =>
        {
            if (component.Aggregate(1.0, (n, part) => n * (parts[part].Modes.Length + 1)) > MostCombinations)
                return component.Select(part => new TiedParts([parts[part]], []));
            var order = TopologicalOrder(component, edges);
            var rank = order.Select((part, i) => (part, i)).ToDictionary(p => p.part, p => p.i);
            return
            [
                new(
                    [.. order.Select(i => parts[i])],
                    [.. follows.Where(l => rank.TryGetValue(partOf[l.From], out var from) && rank.TryGetValue(partOf[l.To], out var to) && from < to)]),
            ];
        });
    }

    private static IEnumerable<List<int>> Components(int count, List<(int From, int To)> edges)
    {
        var label = Enumerable.Range(0, count).ToArray();
        foreach (var (from, to) in edges)
        {
            var (keep, gone) = (label[from], label[to]);
            for (var i = 0; i < count; i++)
            {
                if (label[i] == gone)
                    label[i] = keep;
            }
        }

        return Enumerable.Range(0, count).GroupBy(i => label[i]).Select(g => g.ToList());
    }

    /// <summary>A circle of damage is cut at its first part in the order of the notes; the linter reports it.</summary>
    private static List<int> TopologicalOrder(List<int> component, List<(int From, int To)> edges)
    {
        var left = new List<int>(component);
        var order = new List<int>();
        while (left.Count > 0)
        {
            var next = left.FindIndex(part => edges.All(e => e.To != part || e.From == part || !left.Contains(e.From)));
            order.Add(left[Math.Max(next, 0)]);
            left.RemoveAt(Math.Max(next, 0));
        }

        return order;
    }
}

/// <summary>One fault leads to another with this chance.</summary>
internal sealed record Follows(string From, string To, double Chance);
