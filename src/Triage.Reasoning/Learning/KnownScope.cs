using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>What can fail in machines of one sort: the choice set of a conditional logit (Luce 1959).</summary>
/// <param name="Id">Unique among scopes, not empty.</param>
/// <param name="Availability">
/// Chance that such a machine can have the fault at all, 0 … 1: below 1 when only some builds can and nobody said which build it is. Faults left out
/// cannot be met.
/// </param>
public sealed record KnownScope(string Id, ImmutableSortedDictionary<string, double> Availability)
{
    /// <summary>Id of the scope in which any fault that the notes list can be met.</summary>
    public const string Anything = "";

    /// <summary>Machines that can surely have each of these faults.</summary>
    public static KnownScope Of(string id, IEnumerable<string> faults) =>
        new(id, faults.ToImmutableSortedDictionary(fault => fault, _ => 1.0, StringComparer.Ordinal));
}
