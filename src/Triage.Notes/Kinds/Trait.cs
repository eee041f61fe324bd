using System.Collections.Immutable;

namespace Triage.Notes.Kinds;

/// <summary>Something in which machines of a class differ, and that one look tells.</summary>
/// <param name="Id">Means the same in every class: supply, active, display, case, storage…</param>
/// <param name="Name">In words: "What feeds it".</param>
public sealed record Trait(string Id, string Name)
{
    /// <summary>A machine may have more than one of the values; otherwise it has exactly one.</summary>
    public bool Several { get; init; }

    public ImmutableArray<TraitValue> Values { get; init; } = [];

    /// <summary>Chance that a machine of which nothing is told has at least one of these values, 0 … 1. A value without a share counts as likely as not.</summary>
    public double ChanceOfAny(IReadOnlyCollection<string> values)
    {
        var wanted = Values.Where(v => values.Contains(v.Id)).Select(ShareOf);
        if (Several)
        {
            return 1 - wanted.Aggregate(1.0, (none, share) => none * (1 - share));
        }

        var all = Values.Sum(ShareOf);
        return all > 0 ? wanted.Sum() / all : 0;
    }

    private static double ShareOf(TraitValue value) => value.Share?.Probability ?? 0.5;
}

/// <param name="Id">mains, adapter, cells…</param>
/// <param name="Name">In words: "mains lead, supply inside".</param>
/// <param name="Share">Chance that a machine of the class has it; scaled to sum to 1 where a machine has exactly one. Null when the note does not say.</param>
public sealed record TraitValue(string Id, string Name, Chance? Share)
{
    /// <summary>Words by which a description tells it.</summary>
    public ImmutableArray<string> Says { get; init; } = [];
}
