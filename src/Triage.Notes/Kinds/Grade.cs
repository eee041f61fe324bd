namespace Triage.Notes.Kinds;

/// <summary>How sure a cause is.</summary>
public enum Grade
{
    /// <summary>Shown bad, or the old part back and the fault returned; repair held.</summary>
    Measured,

    /// <summary>One swap, held.</summary>
    Swapped,

    /// <summary>Nobody knows whether the repair held.</summary>
    HoldUnknown,

    /// <summary>Told, with detail.</summary>
    Told,

    Hearsay,
}

/// <summary>What a grade counts for when learning.</summary>
public static class GradeWeights
{
    /// <summary>Share of a job that a cause of this grade counts as: 0 … 1. Our own scale, no source.</summary>
    public static double Of(Grade grade) => grade switch
    {
        Grade.Measured => 1.0,
        Grade.Swapped => 0.7,
        Grade.HoldUnknown => 0.4,
        Grade.Told => 0.2,
        Grade.Hearsay => 0.1,
    };
}
