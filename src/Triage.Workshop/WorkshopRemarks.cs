namespace Triage.Workshop;

/// <summary>What a step says beside its answer.</summary>
internal static class WorkshopRemarks
{
    public static string KeptFromAnEditor(string kept) =>
        $"Another program, an editor perhaps, wrote into the note while it was replaced. What it wrote is kept at {kept}: look through it, and enter again what is missing.";
}
