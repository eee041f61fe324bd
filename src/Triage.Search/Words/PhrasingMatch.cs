using System.Collections.Immutable;

namespace Triage.Search.Words;

/// <summary>A phrasing found in a sentence.</summary>
/// <param name="At">Word indexes of its stems, in their order in the phrasing.</param>
/// <param name="Denial">Index of the "no" or "not" that belongs to the phrasing itself.</param>
/// <param name="Score">Better is more: words found, less what is in between.</param>
internal sealed record PhrasingMatch(Phrasing Phrasing, ImmutableArray<int> At, int? Denial, double Score)
{
    public int First { get; } = At.Min();

    public int Last { get; } = At.Max();

    /// <summary>Words before a break that another phrasing may use too: "display dim and flickering".</summary>
    public int? Shared { get; init; }

    /// <summary>"Neither the reel nor the capstan goes round": it is the words behind the break that another phrasing may use too.</summary>
    public bool Neither { get; init; }

    public IEnumerable<int> All => Denial is { } denial ? At.Append(denial) : At;

    /// <summary>Words that no other phrasing may use.</summary>
    public IEnumerable<int> Own => Shared is { } at ? All.Where(i => Neither ? i < at : i > at) : All;
}
