using System.Collections.Immutable;
using Triage.Reasoning.Learning;

namespace Triage.Workshop.Reviews;

/// <summary>How good the bench's forecasts were: each closed job forecast from what it came in with, before it was counted.</summary>
public sealed record ForecastReview
{
    /// <summary>Closed jobs forecast: the latest, where there are very many.</summary>
    public required int Jobs { get; init; }

    /// <summary>The bench first, then what it is held against; empty when no job could be forecast.</summary>
    public required ImmutableArray<ForecasterScore> Scores { get; init; }

    /// <summary>How often the bench's first cause was right, by how sure it was; least sure first.</summary>
    public required ImmutableArray<ReliabilityBin> Reliability { get; init; }

    /// <summary>What the scores mean, and where another one is ahead.</summary>
    public required ImmutableArray<string> Remarks { get; init; }
}

/// <param name="Name">Who forecast.</param>
public sealed record ForecasterScore(string Name, PredictionScore Score);

/// <summary>How far the working out is.</summary>
public readonly record struct ForecastProgress(int Done, int All);
