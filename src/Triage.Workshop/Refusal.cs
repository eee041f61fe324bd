namespace Triage.Workshop;

/// <param name="Kind">Which refusal.</param>
/// <param name="What">What is wrong.</param>
/// <param name="Instead">What to do.</param>
/// <param name="KeptAt">Where the refused version was kept; null when there was nothing to keep.</param>
public sealed record Refusal(RefusalKind Kind, string What, string Instead, string? KeptAt = null)
{
    public override string ToString() => $"{What} {Instead}".TrimEnd();
}

public enum RefusalKind
{
    /// <summary>No such job, device, finding, test…</summary>
    NotFound,

    /// <summary>The words or values do not fit.</summary>
    NotUnderstood,

    /// <summary>The note changed since it was read; both versions are kept.</summary>
    ChangedMeanwhile,

    /// <summary>A hard rule: consent, licence, spending limit, power stage.</summary>
    NotAllowed,

    /// <summary>The folder cannot be written: read-only, full, gone.</summary>
    CannotWrite,
}
