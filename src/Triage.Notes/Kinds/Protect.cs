using System.Collections.Immutable;

namespace Triage.Notes.Kinds;

/// <summary>What is done before diagnosis so that nothing is lost and nothing gets worse.</summary>
/// <param name="Id">Unique in its class.</param>
/// <param name="Name">What to do, in words.</param>
public sealed record Protect(string Id, string Name)
{
    public ImmutableArray<string> Steps { get; init; } = [];

    public Effort Effort { get; init; } = new();

    /// <summary>What is lost otherwise: the reason that is shown.</summary>
    public string? Loses { get; init; }

    /// <summary>Any of these calls for it; none named: always.</summary>
    public ImmutableArray<Occasion> When { get; init; } = [];

    public BuildCondition? Build { get; init; }
}

/// <summary>What calls for a protect step.</summary>
public abstract record Occasion;

/// <param name="Value">Null: any but the normal one.</param>
public sealed record Noticed(string Finding, string? Value) : Occasion;

/// <summary>A fault that is likelier than that.</summary>
/// <param name="Over">0 … 1.</param>
public sealed record Feared(string Fault, double Over) : Occasion;
