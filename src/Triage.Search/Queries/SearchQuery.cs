using System.Collections.Immutable;
using Triage.Search.Indexing;

namespace Triage.Search.Queries;

/// <summary>
/// A question to the index. Any text is allowed; words in quotation marks must stand together. Values of one filter are alternatives,
/// different filters must all hold.
/// </summary>
/// <param name="Text">As typed; blank finds everything that the filters let through.</param>
public sealed record SearchQuery(string Text)
{
    /// <summary>Kinds as notes write them: job, fault, part-class…</summary>
    public ImmutableArray<string> Kinds { get; init; } = [];

    /// <summary>Device and device class ids.</summary>
    public ImmutableArray<string> Devices { get; init; } = [];

    /// <summary>Finding ids, or finding=value.</summary>
    public ImmutableArray<string> Findings { get; init; } = [];

    /// <summary>Fault ids.</summary>
    public ImmutableArray<string> Causes { get; init; } = [];

    /// <summary>mended, worked-around… or open.</summary>
    public ImmutableArray<string> Outcomes { get; init; } = [];

    /// <summary>Hits to leave out before the first.</summary>
    public int Skip { get; init; }

    /// <summary>Hits to return; none, to count only.</summary>
    public int Take { get; init; } = 10;

    /// <summary>The last word may be only the beginning of one.</summary>
    public bool Unfinished { get; init; }

    /// <summary>Id of a note: finds others that have most of its telling words; null for any.</summary>
    public string? Like { get; init; }

    public SearchSort Sort { get; init; }

    /// <summary>Values of one filter, any of which will do; none lets everything through.</summary>
    internal ImmutableArray<string> Chosen(NoteFilter filter) => filter.Name switch
    {
        NoteFilter.Kind => Kinds,
        NoteFilter.Device => Devices,
        NoteFilter.Finding => Findings,
        NoteFilter.Cause => Causes,
        NoteFilter.Outcome => Outcomes,
        _ => [],
    };
}

public enum SearchSort
{
    Relevance,

    /// <summary>Newest first; notes without a date last.</summary>
    Date,

    /// <summary>First those whose cause was mended in most jobs that are known to have held.</summary>
    Held,
}
