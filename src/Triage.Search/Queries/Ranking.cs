namespace Triage.Search.Queries;

/// <summary>Which parts of the ranking take part; all, unless a test asks what one of them is worth.</summary>
internal sealed record Ranking
{
    public static Ranking Whole { get; } = new();

    /// <summary>A name counts more than the body.</summary>
    public bool Fields { get; init; } = true;

    public bool Synonyms { get; init; } = true;

    /// <summary>A whole marking counts more than its pieces.</summary>
    public bool Markings { get; init; } = true;

    /// <summary>Notes with a finding that the question speaks of.</summary>
    public bool Findings { get; init; } = true;

    /// <summary>Words that are in no note also stand for the nearest one that is.</summary>
    public bool Spelling { get; init; } = true;

    /// <summary>Fixes that held come before those that did not.</summary>
    public bool PriorFix { get; init; } = true;
}
