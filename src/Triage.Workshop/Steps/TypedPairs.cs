using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Workshop.Steps;

/// <summary>Rows of a round and builds as they are typed: <c>hum=yes</c>, <c>supply=mains,cells</c>.</summary>
public static class TypedPairs
{
    /// <summary>What was seen of each row; null where a text is no pair.</summary>
    public static ImmutableArray<SeenFinding>? Rows(IEnumerable<string> texts) =>
        texts.Select(Pair).ToList() is var pairs && pairs.TrueForAll(p => p is not null) ? [.. pairs.Select(p => new SeenFinding(p!.Value.Name, p.Value.Value))] : null;

    /// <summary>What is told of a build; null where a text is no pair.</summary>
    public static Build? BuildOf(IEnumerable<string> texts) =>
        texts.Select(Pair).ToList() is var pairs && pairs.TrueForAll(p => p is not null)
            ? new([.. pairs.Select(p => new TraitValues(p!.Value.Name, [.. p.Value.Value.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)]))])
            : null;

    private static (string Name, string Value)? Pair(string text) =>
        text.Split('=', 2, StringSplitOptions.TrimEntries) is [{ Length: > 0 } name, { Length: > 0 } value] ? (name, value) : null;
}
