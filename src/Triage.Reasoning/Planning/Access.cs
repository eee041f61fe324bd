using System.Collections.Immutable;

namespace Triage.Reasoning.Planning;

/// <summary>What must be opened to reach something: a forest of steps (Ottosen &amp; Jensen 2010, access clusters).</summary>
public sealed record AccessStep(string Id, double Minutes, string? Behind);

/// <summary>The steps of one device.</summary>
public sealed record AccessTree(ImmutableArray<AccessStep> Steps)
{
    public static AccessTree None { get; } = new([]);

    /// <summary>The steps from the outside in that must be open to reach <paramref name="step"/>, itself last; empty for null or an unknown step.</summary>
    public IReadOnlyList<AccessStep> PathTo(string? step)
    {
        var path = new List<AccessStep>();
        while (step is not null && Steps.FirstOrDefault(s => s.Id == step) is { } found && !path.Contains(found))
        {
            path.Insert(0, found);
            step = found.Behind;
        }

        return path;
    }
}
