using System.Globalization;
using Triage.Reasoning.Learning;

namespace Triage.Tools.Soybean;

/// <summary>Scores pooled over the folds, beside the baselines.</summary>
internal static class ScoreTable
{
    public static void Print(TextWriter to, PredictionScore ranking, string data)
    {
        to.WriteLine($"{"",-36}{"right",6}{"top-1",8}{"top-3",8}{"log-loss",10}{"Brier",8}{"ECE",8}");
        Line(to, "the bench", ranking.Count, [ranking.Top1, ranking.Top3, ranking.LogLoss, ranking.Brier, ranking.CalibrationError]);
        foreach (var row in File.ReadLines(Path.Combine(data, "soybean-baselines.csv")).Select(l => l.Split(',')).Where(r => r[1] == "pooled"))
            Line(to, row[0], Number(row[2]), [.. row[3..].Select(Number)]);
    }

    private static void Line(TextWriter to, string name, double count, double[] scores) => to.WriteLine(string.Create(
        CultureInfo.InvariantCulture,
        $"{name,-36}{Math.Round(count * scores[0]),6}{scores[0],8:F4}{scores[1],8:F4}{scores[2],10:F4}{scores[3],8:F4}{scores[4],8:F4}"));

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
