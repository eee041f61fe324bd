using System.Collections.Immutable;

namespace Triage.Search.Queries;

/// <summary>What was found.</summary>
/// <param name="Total">All notes that match, not only those returned.</param>
/// <param name="Hits">Best (or newest) first.</param>
/// <param name="Counts">
/// By filter (kind, device, finding, cause, outcome): how many notes each of its values would leave, were it the only one chosen there.
/// </param>
/// <param name="Notice">What was not done as asked, and why; null when all was.</param>
public sealed record SearchResults(
    int Total,
    ImmutableArray<SearchHit> Hits,
    ImmutableDictionary<string, ImmutableArray<ValueCount>> Counts,
    string? Notice)
{
    /// <summary>The question with its misspelt words put right; null when every word is in some note or nothing is near.</summary>
    public string? DidYouMean { get; init; }
}

/// <param name="Value">Filter value.</param>
/// <param name="Count">Notes.</param>
public sealed record ValueCount(string Value, int Count);
