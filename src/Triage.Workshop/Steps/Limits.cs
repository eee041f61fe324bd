namespace Triage.Workshop.Steps;

/// <summary>How much one may type at once, in characters.</summary>
public static class Limits
{
    public const int Line = 2_000;

    public const int Complaint = 20_000;
}
