namespace Triage.Notes.Kinds;

/// <summary>How a mend is proven: what is measured, on what load, how warm, how long.</summary>
public sealed record ProofStep(string Say)
{
    public Effort Effort { get; init; } = new();

    public BuildCondition? Build { get; init; }
}
