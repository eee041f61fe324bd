namespace Triage.Workshop.Steps;

/// <summary>How much one may type at once, in characters where nothing else is said.</summary>
public static class Limits
{
    public const int Line = 2_000;

    /// <summary>Bytes of one photo: what a phone takes at its finest is half of it (common practice, no source).</summary>
    public const int Photo = 12_000_000;

    public const int Complaint = 20_000;

    /// <summary>Bytes of a drawing: a scanned service sheet of some pages.</summary>
    public const int Drawing = 50_000_000;
}
