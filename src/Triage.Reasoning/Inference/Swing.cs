namespace Triage.Reasoning.Inference;

/// <summary>What a swing moves.</summary>
public enum SwingKind
{
    /// <summary>How common a root state is.</summary>
    Prior,

    /// <summary>How often a cause shows a value of a finding.</summary>
    Link,

    /// <summary>How often a value of a finding is seen without any listed cause.</summary>
    Ambient,
}

/// <summary>One number which, moved within its own interval, puts another fault first.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Root">Index of the root of a prior or link; −1 for an ambient chance.</param>
/// <param name="State">Its state; of a link the first of the states that share it.</param>
/// <param name="Finding">Index of the finding of a link or ambient chance; −1 for a prior.</param>
/// <param name="Value">The value of the finding that it is the chance of (of an ordered one: among the values up to it); 0 for a prior.</param>
public sealed record Swing(SwingKind Kind, int Root, int State, int Finding, int Value)
{
    /// <summary>The chance as the network says it.</summary>
    public required double Chance { get; init; }

    /// <summary>From here on another fault comes first.</summary>
    public required double At { get; init; }

    /// <summary>The chance's own interval, in which <see cref="At"/> lies.</summary>
    public required Interval Interval { get; init; }

    /// <summary>Fault that is first now.</summary>
    public required string First { get; init; }

    /// <summary>Fault that is first beyond <see cref="At"/>.</summary>
    public required string Instead { get; init; }
}
