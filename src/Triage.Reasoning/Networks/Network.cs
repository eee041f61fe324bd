using System.Collections.Immutable;

namespace Triage.Reasoning.Networks;

/// <summary>A two-layer network: independent multi-state roots, findings that depend on them.</summary>
/// <param name="Roots">The causes.</param>
/// <param name="Findings">What can be seen of them.</param>
public sealed record Network(ImmutableArray<Root> Roots, ImmutableArray<Finding> Findings)
{
    /// <summary>Condition everything on at least one root not being good: somebody brought the machine in.</summary>
    public bool SomethingIsWrong { get; init; } = true;
}
