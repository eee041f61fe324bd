using System.Collections.Immutable;
using Lucene.Net.Search;

namespace Triage.Search.Queries;

/// <summary>A part of a score, with the parts it is made of.</summary>
/// <param name="What">As Lucene words it.</param>
public sealed record ScoreReason(float Value, string What, ImmutableArray<ScoreReason> Parts)
{
    /// <summary>This part and all below it.</summary>
    public IEnumerable<ScoreReason> All => [this, .. Parts.SelectMany(p => p.All)];

    internal static ScoreReason From(Explanation why) =>
        new(why.Value, why.Description, [.. (why.GetDetails() ?? []).Select(From)]);
}
