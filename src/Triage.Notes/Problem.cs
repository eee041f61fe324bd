namespace Triage.Notes;

/// <summary>Something wrong with a note.</summary>
/// <param name="Path">Relative to the book.</param>
/// <param name="Line">From 1; 0 when the whole file is meant.</param>
/// <param name="Column">From 1; 0 when the whole line is meant.</param>
/// <param name="What">What is wrong.</param>
/// <param name="Instead">What to write or do instead.</param>
public sealed record Problem(string Path, int Line, int Column, Severity Severity, string What, string Instead)
{
    public override string ToString() => $"{Path}:{Line}:{Column}: {What} {Instead}".TrimEnd();
}

public enum Severity
{
    /// <summary>Worth knowing; the note is used.</summary>
    Hint,

    /// <summary>The note is used without this field, and not learned from where the field matters.</summary>
    Warning,

    /// <summary>The note is searchable but not used for reasoning or learning.</summary>
    Error,
}
