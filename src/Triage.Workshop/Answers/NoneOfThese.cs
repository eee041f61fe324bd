using System.Collections.Immutable;

namespace Triage.Workshop.Answers;

/// <summary>When no listed cause explains what was seen, the answer says so.</summary>
internal static class NoneOfThese
{
    public static IEnumerable<string> Remarks(ImmutableArray<RankedCause> causes, NextBestStep next)
    {
        if (causes.IsEmpty || !causes[0].IsUnlisted)
            yield break;
        yield return "No listed cause explains this well. Look and measure more before changing parts; what you find can be closed as a new fault in your own words, and is listed from then on.";
        if (!next.ToLearnMore.IsEmpty)
            yield return $"To learn more: {string.Join("; ", next.ToLearnMore.Select(t => t.Name))}.";
    }
}
