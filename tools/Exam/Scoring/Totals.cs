using System.Collections.Immutable;

namespace Triage.Tools.Exam.Scoring;

/// <summary>All cases of one book together; shares, but for the counts.</summary>
internal sealed record Totals(int Cases, double FirstAcceptable, double Silly, int Unsafe, double Ended, double? MinutesRatio, double RankedFirst3)
{
    public static Totals Of(ImmutableArray<CaseScore> scores) => new(
        scores.Length,
        Share(scores.Count(s => s.FirstAcceptable), scores.Length),
        Share(scores.Sum(s => s.Silly), scores.Sum(s => s.Marks.Length)),
        scores.Sum(s => s.Unsafe),
        Share(scores.Count(s => s.RightlyEnded), scores.Length),
        Median([.. scores.Select(s => s.MinutesRatio).Order()]),
        Share(scores.Count(s => s.Rank <= 3), scores.Length));

    /// <summary>Lines that nobody judged, of all.</summary>
    public static double Unjudged(ImmutableArray<CaseScore> scores) =>
        Share(scores.Sum(s => s.Marks.Count(m => !m.Judged)), scores.Sum(s => s.Marks.Length));

    private static double Share(int some, int all) => all == 0 ? 0 : (double)some / all;

    /// <summary>Null when it is infinite: half of the machines or more came to no cause.</summary>
    private static double? Median(ImmutableArray<double> ordered)
    {
        if (ordered.IsEmpty)
            return null;
        var median = (ordered[(ordered.Length - 1) / 2] + ordered[ordered.Length / 2]) / 2;
        return double.IsFinite(median) ? median : null;
    }
}
