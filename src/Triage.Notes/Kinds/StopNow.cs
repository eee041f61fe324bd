namespace Triage.Notes.Kinds;

/// <summary>What must be stopped at once, whatever the fault.</summary>
public sealed record StopNow(string Say)
{
    public BuildCondition? Build { get; init; }
}
