using System.Collections.Immutable;

namespace Triage.Notes.Kinds;

/// <summary>Only for machines that have at least one of the listed values of every listed trait.</summary>
public sealed record BuildCondition(ImmutableArray<TraitValues> Traits)
{
    /// <summary>Whether nothing that is told of a machine speaks against it.</summary>
    public bool Fits(Build told) => Traits.All(t => told.Of(t.Trait) is not { } has || t.Values.Any(has.Contains));

    /// <summary>Chance that a machine of a class meets it, by what is told and, where nothing is, by the class's shares, 0 … 1.</summary>
    /// <param name="traits">Of the class. One that it does not have stands open: it takes nothing away.</param>
    public double ChanceOn(Build told, ImmutableArray<Trait> traits) =>
        Fits(told) ? Traits.Where(t => told.Of(t.Trait) is null).Aggregate(1.0, (chance, t) => chance * Untold(t, traits)) : 0;

    private static double Untold(TraitValues wanted, ImmutableArray<Trait> traits) =>
        traits.FirstOrDefault(t => t.Id == wanted.Trait)?.ChanceOfAny(wanted.Values) ?? 1;

    public bool Equals(BuildCondition? other) => other is not null && Traits.SequenceEqual(other.Traits);

    public override int GetHashCode() => Traits.Aggregate(0, HashCode.Combine);
}
