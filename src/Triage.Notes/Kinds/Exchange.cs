namespace Triage.Notes.Kinds;

/// <summary>A whole new one in place of the machine, where that is what one does: an adapter, a lead.</summary>
public sealed record Exchange
{
    public Effort Effort { get; init; } = new();

    public BuildCondition? Build { get; init; }
}
