using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Workshop.Steps;

/// <summary>A test that no note lists yet.</summary>
/// <param name="Reveals">Finding id.</param>
public sealed record NewTest(string Name, string Reveals)
{
    private const double UsualMinutes = 2;

    /// <summary>A look when nobody said.</summary>
    public TestWay? Way { get; init; }

    /// <summary>At the bench; as much as a look takes when nobody said: free it would always come first.</summary>
    public double? Minutes { get; init; }

    /// <summary>What it puts on the unit; cold when nobody said.</summary>
    public PowerStage? Power { get; init; }

    /// <summary>Said before its steps; null for none.</summary>
    public string? Caution { get; init; }

    public ImmutableArray<string> Steps { get; init; } = [];

    internal double Takes => Minutes ?? UsualMinutes;
}
