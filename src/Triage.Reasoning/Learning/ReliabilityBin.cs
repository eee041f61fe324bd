using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>Forecasts whose likeliest class had about the same chance: how often it was right, beside how sure they were.</summary>
/// <param name="From">Chances from here …</param>
/// <param name="To">… to here, of equal width over all bins.</param>
/// <param name="Count">Forecasts in it, at least 1.</param>
/// <param name="Confidence">Mean chance of the likeliest class.</param>
/// <param name="Right">Share of them that were right.</param>
/// <param name="Interval">90 % interval (Wilson 1927) of that share.</param>
public sealed record ReliabilityBin(double From, double To, int Count, double Confidence, double Right, Interval Interval)
{
    internal const int Bins = 15;

    /// <summary>Bins that hold anything, least sure first (reliability diagram: Murphy and Winkler 1977).</summary>
    public static ImmutableArray<ReliabilityBin> Of(IEnumerable<Prediction> predictions) =>
    [
        .. predictions.GroupBy(p => Math.Min((int)(Bins * p.Confidence), Bins - 1)).OrderBy(bin => bin.Key).Select(bin =>
        {
            int count = bin.Count(), right = bin.Count(p => p.Rank == 0);
            return new ReliabilityBin((double)bin.Key / Bins, (bin.Key + 1.0) / Bins, count, bin.Average(p => p.Confidence), (double)right / count, BinomialIntervals.Wilson(right, count, 0.9));
        }),
    ];
}
