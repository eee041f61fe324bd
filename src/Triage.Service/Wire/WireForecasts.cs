using System.Collections.Immutable;
using Triage.Workshop.Reviews;

namespace Triage.Service.Wire;

/// <summary>Forecasts of closed jobs before they were counted: the bench first, then what it is held against.</summary>
internal sealed record WireForecasts(int Jobs, ImmutableArray<WireForecaster> Scores, ImmutableArray<WireReliability> Reliability, ImmutableArray<string> Remarks)
{
    public static WireForecasts Of(ForecastReview review) => new(
        review.Jobs,
        [.. review.Scores.Select(s => new WireForecaster(s.Name, s.Score.Top1, s.Score.Top3) { LogLoss = s.Score.LogLoss, Brier = s.Score.Brier, CalibrationError = s.Score.CalibrationError })],
        [.. review.Reliability.Select(b => new WireReliability(b.Count, b.Confidence, b.Right) { Lower = b.Interval.Lower, Upper = b.Interval.Upper })],
        review.Remarks);
}

internal sealed record WireForecaster(string Name, double Top1, double Top3)
{
    public required double LogLoss { get; init; }

    public required double Brier { get; init; }

    public required double CalibrationError { get; init; }
}

/// <summary>Jobs about which the bench was as sure; share of them whose first cause was right, with its 90 % interval.</summary>
internal sealed record WireReliability(int Count, double Confidence, double Right)
{
    public required double Lower { get; init; }

    public required double Upper { get; init; }
}
