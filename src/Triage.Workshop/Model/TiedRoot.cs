using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Reasoning.Networks;
using LeadsTo = Triage.Reasoning.Networks.LeadsTo;

namespace Triage.Workshop.Model;

/// <summary>Parts tied by damage, compiled into one root whose states are their combinations.</summary>
internal static class TiedRoot
{
    public static Root Of(TiedParts tied)
    {
        var places = tied.Parts
            .SelectMany((part, p) => part.Modes.Select((mode, m) => (mode.Fault, mode.Prior.Weight, Part: p, State: m + 1)))
            .ToDictionary(m => m.Fault, StringComparer.Ordinal);
        var root = CompoundRoot.Compile(
            string.Join('+', tied.Parts.Select(p => p.Id)),
            [.. tied.Parts.Select((part, p) => Part(part, [.. tied.Follows
                .Where(f => places[f.To].Part == p)
                .Select(f => new LeadsTo(places[f.From].Part, places[f.From].State, places[f.To].State, f.Chance))],
                Table(part, p, tied.Parts)))]).Root;
        return root with
        {
            PriorWeight = [.. root.States.Select(s => s.Faults.Select(f => places[f].Weight).DefaultIfEmpty(double.PositiveInfinity).Min())],
        };
    }

    private static CompoundPart Part(FaultyPart part, ImmutableArray<LeadsTo> follows, ConditionalTable? table)
    {
        double[] modes = [.. part.Modes.Select(m => m.Prior.Mean)];
        return new(part.Id, [new("good", []), .. part.Modes.Select(m => new RootState(m.Fault, [m.Fault]))], [1 - modes.Sum(), .. modes])
        {
            Follows = table is null ? follows : [],
            Table = table,
        };
    }

    /// <summary>
    /// The explicit table of a part with a single mode: one row for each combination of the states of the parts that its rows name.
    /// Null when the part has none.
    /// </summary>
    private static ConditionalTable? Table(FaultyPart part, int self, ImmutableArray<FaultyPart> parts)
    {
        var rows = part.Modes.SelectMany(m => m.Given).ToList();
        if (rows.Count == 0 || part.Modes.Length > 1)
            return null;
        var named = rows.SelectMany(r => r.Present).ToHashSet(StringComparer.Ordinal);
        ImmutableArray<int> parents = [.. Enumerable.Range(0, self).Where(p => parts[p].Modes.Any(m => named.Contains(m.Fault)))];
        IEnumerable<ImmutableArray<string>> combinations = [[]];
        foreach (var parent in parents)
            combinations = combinations.SelectMany(c => StatesOf(parts[parent]).Select(state => state is null ? c : c.Add(state)));
        return new(parents, [.. combinations.Select(c => Row(c.Where(named.Contains), rows))]);
    }

    private static IEnumerable<string?> StatesOf(FaultyPart part) => [null, .. part.Modes.Select(m => m.Fault)];

    private static ImmutableArray<double> Row(IEnumerable<string> present, List<GivenRow> rows)
    {
        var set = present.ToHashSet(StringComparer.Ordinal);
        var chance = rows.FirstOrDefault(r => set.SetEquals(r.Present))?.Probability ?? 0;
        return [1 - chance, chance];
    }
}
