using System.Collections.Immutable;

namespace Triage.Reasoning.Networks;

/// <summary>One part of a compound root.</summary>
/// <param name="Id">Unique within the compound.</param>
/// <param name="States">State 0 is good.</param>
/// <param name="Own">P(state) with no earlier part leading to anything, one per state, summing to 1.</param>
public sealed record CompoundPart(string Id, ImmutableArray<RootState> States, ImmutableArray<double> Own)
{
    /// <summary>
    /// What earlier parts lead to, as noisy-OR (Pearl 1988) over what the part does by itself. With several modes the part's own
    /// state comes first, then what is led to in the order given: the first to strike decides.
    /// </summary>
    public ImmutableArray<LeadsTo> Follows { get; init; } = [];

    /// <summary>An explicit conditional table instead of <see cref="Own"/> and <see cref="Follows"/>; null when there is none.</summary>
    public ConditionalTable? Table { get; init; }

    /// <summary>P(state | states of the earlier parts).</summary>
    internal ImmutableArray<double> Given(ImmutableArray<int> earlier, ImmutableArray<CompoundPart> parts)
    {
        if (Table is { } table)
        {
            return table.Rows[table.Parents.Aggregate(0, (row, parent) => row * parts[parent].States.Length + earlier[parent])];
        }

        double[] chances = [.. Own];
        foreach (var cause in Follows.Where(f => earlier[f.Part] == f.PartState).GroupBy(f => f.Part))
        {
            var spared = chances[0];
            chances[0] *= 1 - cause.Sum(f => f.Chance);
            foreach (var follows in cause)
            {
                chances[follows.State] += spared * follows.Chance;
            }
        }

        return [.. chances];
    }

    internal void Require(ImmutableArray<CompoundPart> parts, int self)
    {
        Demand(States.Length == Own.Length && IsDistribution(Own), "give one chance for each state, summing to 1");
        Demand(
            Follows.All(f => f.Part >= 0 && f.Part < self && f.PartState > 0 && f.PartState < parts[f.Part].States.Length),
            "what leads to it must be a fault state of an earlier part");
        Demand(Follows.All(f => f.State > 0 && f.State < States.Length && f.Chance is >= 0 and <= 1), "what is led to must be a fault state, with a chance in 0 … 1");
        Demand(Follows.GroupBy(f => (f.Part, f.PartState)).All(g => g.Sum(f => f.Chance) <= 1 + 1e-9), "one state cannot lead to modes with chances above 1 in all");
        if (Table is { } table)
        {
            Demand(table.Parents.All(p => p >= 0 && p < self), "its table may depend on earlier parts only");
            Demand(
                table.Rows.Length == table.Parents.Aggregate(1, (rows, p) => rows * parts[p].States.Length)
                    && table.Rows.All(row => row.Length == States.Length && IsDistribution(row)),
                "its table needs one distribution over its states for each combination of its parents' states");
        }

        void Demand(bool holds, string otherwise)
        {
            if (!holds)
            {
                throw new ArgumentException($"Part '{Id}': {otherwise}.");
            }
        }
    }

    private static bool IsDistribution(ImmutableArray<double> chances) =>
        chances.All(p => p is >= 0 and <= 1) && Math.Abs(chances.Sum() - 1) <= 1e-6;
}

/// <summary>A state of an earlier part leads to a state of this one with a chance.</summary>
/// <param name="Part">Index of the earlier part.</param>
/// <param name="PartState">Its state, never good.</param>
/// <param name="State">The state it leads to, never good.</param>
/// <param name="Chance">0 … 1.</param>
public readonly record struct LeadsTo(int Part, int PartState, int State, double Chance);

/// <summary>P(state | parents), explicitly.</summary>
/// <param name="Parents">Indices of earlier parts.</param>
/// <param name="Rows">One distribution for each combination of the parents' states, the last parent running fastest.</param>
public sealed record ConditionalTable(ImmutableArray<int> Parents, ImmutableArray<ImmutableArray<double>> Rows);
