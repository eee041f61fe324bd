using Triage.Reasoning.Networks;

namespace Triage.Workshop.Translating;

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
                .Select(f => new LeadsTo(places[f.From].Part, places[f.From].State, places[f.To].State, f.Chance))]))]).Root;
        return root with
        {
            PriorWeight = [.. root.States.Select(s => s.Faults.Select(f => places[f].Weight).DefaultIfEmpty(double.PositiveInfinity).Min())],
        };
    }

    private static CompoundPart Part(FaultyPart part, System.Collections.Immutable.ImmutableArray<LeadsTo> follows)
    {
        double[] modes = [.. part.Modes.Select(m => m.Prior.Mean)];
        return new(part.Id, [new("good", []), .. part.Modes.Select(m => new RootState(m.Fault, [m.Fault]))], [1 - modes.Sum(), .. modes]) { Follows = follows };
    }
}
