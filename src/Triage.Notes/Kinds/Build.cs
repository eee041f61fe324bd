using System.Collections.Immutable;

namespace Triage.Notes.Kinds;

/// <summary>What is told of a machine's build: for each trait that is told, every value that it has.</summary>
public sealed record Build(ImmutableArray<TraitValues> Traits)
{
    public static Build Untold { get; } = new([]);

    public bool IsUntold => Traits.IsEmpty;

    /// <summary>What the machine has of a trait; null when nobody told.</summary>
    public ImmutableArray<string>? Of(string trait) => Traits.FirstOrDefault(t => t.Trait == trait)?.Values;

    /// <summary>The same, with what another telling adds; where both tell a trait, the other one counts.</summary>
    public Build With(Build nearer) => new([.. Traits.Where(t => nearer.Of(t.Trait) is null), .. nearer.Traits]);

    public bool Equals(Build? other) => other is not null && Traits.SequenceEqual(other.Traits);

    public override int GetHashCode() => Traits.Aggregate(0, HashCode.Combine);
}

/// <summary>Values of one trait.</summary>
public sealed record TraitValues(string Trait, ImmutableArray<string> Values)
{
    public bool Equals(TraitValues? other) => other is not null && Trait == other.Trait && Values.SequenceEqual(other.Values);

    public override int GetHashCode() => Values.Aggregate(Trait.GetHashCode(StringComparison.Ordinal), HashCode.Combine);
}
