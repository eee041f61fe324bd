namespace Triage.Reasoning.Learning;

/// <summary>Scores of probability forecasts over a list of classes, of which one was true.</summary>
/// <param name="Count">Forecasts scored.</param>
/// <param name="Top1">Share whose likeliest class was true; ties go to the first.</param>
/// <param name="Top3">Share whose true class was among the three likeliest; ties go to the first.</param>
/// <param name="LogLoss">Mean −ln P(true class), P no less than 1e-15.</param>
/// <param name="Brier">Mean over forecasts of the squared error summed over classes, 0 … 2 (Brier 1950).</param>
/// <param name="CalibrationError">
/// Expected calibration error of the likeliest class: 15 bins of equal width, weighted |share right − mean confidence|
/// (Naeini, Cooper and Hauskrecht 2015).
/// </param>
public sealed record PredictionScore(int Count, double Top1, double Top3, double LogLoss, double Brier, double CalibrationError)
{
    public static PredictionScore Of(IEnumerable<Prediction> predictions)
    {
        Prediction[] all = [.. predictions];
        if (all.Length == 0) throw new ArgumentException("There is nothing to score; give at least one prediction.");
        return new(
            all.Length,
            all.Average(p => p.Rank == 0 ? 1.0 : 0),
            all.Average(p => p.Rank < 3 ? 1.0 : 0),
            all.Average(p => -Math.Log(Math.Max(p.Probabilities[p.Truth], 1e-15))),
            all.Average(p => p.Probabilities.Select((q, c) => Math.Pow(q - (c == p.Truth ? 1 : 0), 2)).Sum()),
            ReliabilityBin.Of(all).Sum(bin => Math.Abs(bin.Right - bin.Confidence) * bin.Count / all.Length));
    }
}

/// <summary>A forecast and what came true.</summary>
/// <param name="Probabilities">One per class, summing to 1.</param>
/// <param name="Truth">Index of the true class.</param>
public sealed record Prediction(IReadOnlyList<double> Probabilities, int Truth)
{
    internal double Confidence => Probabilities.Max();

    /// <summary>How many classes stand before the true one.</summary>
    internal int Rank => Probabilities.Where((q, c) => q > Probabilities[Truth] || q == Probabilities[Truth] && c < Truth).Count();
}
