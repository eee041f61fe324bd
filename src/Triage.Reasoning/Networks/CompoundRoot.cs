using System.Collections.Immutable;

namespace Triage.Reasoning.Networks;

/// <summary>
/// Parts tied together by damage that follows, as one root whose states are the combinations of theirs; so the network stays
/// two-layered and exact. Combinations that cannot happen are left out.
/// </summary>
/// <param name="Root">The root; its states carry the faults of all parts in them.</param>
/// <param name="Combinations">Per state of the root, the state of each part.</param>
public sealed record CompoundRoot(Root Root, ImmutableArray<ImmutableArray<int>> Combinations)
{
    /// <summary>Compiles parts, which may depend on earlier ones only.</summary>
    /// <param name="id">Id of the root.</param>
    /// <param name="parts">Causes before consequences.</param>
    /// <param name="mostStates">Combinations allowed.</param>
    /// <exception cref="ArgumentException">Parts depend on later ones, tables do not fit, or there are too many combinations.</exception>
    public static CompoundRoot Compile(string id, ImmutableArray<CompoundPart> parts, int mostStates = 512)
    {
        for (var i = 0; i < parts.Length; i++)
        {
            parts[i].Require(parts, i);
        }

        List<(ImmutableArray<int> States, double Prior)> combinations = [([], 1)];
        for (var i = 0; i < parts.Length; i++)
        {
            combinations =
            [
                .. combinations.SelectMany(c => parts[i].Given(c.States, parts)
                    .Select((p, s) => (States: c.States.Add(s), Prior: c.Prior * p))
                    .Where(next => next.Prior > 0 || next.States.All(s => s == 0))),
            ];
            if (combinations.Count > mostStates)
            {
                throw new ArgumentException(
                    $"Compound root '{id}' has more than {mostStates} combinations with part '{parts[i].Id}': tie fewer faults together.");
            }
        }

        return new(
            new Root(id, [.. combinations.Select(c => State(c.States, parts))], [.. combinations.Select(c => c.Prior)]),
            [.. combinations.Select(c => c.States)]);
    }

    /// <summary>
    /// Links of one part's state to an ordered finding, one for each combination that contains it: combined by noisy-MAX, so
    /// that C of a combination is the product of the C of its modes.
    /// </summary>
    /// <param name="link">Root and State are read as part and state of that part.</param>
    /// <param name="root">Index that the compound root has in the network.</param>
    public IEnumerable<Link> Links(Link link, int root) =>
        Enumerable.Range(0, Combinations.Length)
            .Where(s => Combinations[s][link.Root] == link.State)
            .Select(s => link with { Root = root, State = s });

    /// <summary>A finding given by an explicit table over the combinations, whatever its form; linked to this root alone.</summary>
    /// <param name="id">Id of the finding.</param>
    /// <param name="values">Its values.</param>
    /// <param name="given">P(value | states of the parts), one per value, summing to 1.</param>
    /// <param name="root">Index that the compound root has in the network.</param>
    public Finding Tabulate(string id, ImmutableArray<string> values, Func<ImmutableArray<int>, ImmutableArray<double>> given, int root) =>
        new(id, values, given(Combinations[0]), [.. Combinations.Skip(1).Select((c, i) => new Link(root, i + 1, given(c)))]) { Nominal = true };

    private static RootState State(ImmutableArray<int> states, ImmutableArray<CompoundPart> parts)
    {
        var faulty = parts.Zip(states).Where(p => p.Second > 0).Select(p => (Part: p.First, State: p.First.States[p.Second])).ToArray();
        return faulty.Length == 0
            ? new("good", [])
            : new(string.Join('+', faulty.Select(f => $"{f.Part.Id} {f.State.Id}")), [.. faulty.SelectMany(f => f.State.Faults)]);
    }
}
