using System.Globalization;
using Triage.Reasoning.Learning;

namespace Triage.Tools.Soybean;

/// <summary>Scores in columns.</summary>
internal sealed class ScoreTable
{
    private readonly TextWriter to;

    public ScoreTable(TextWriter to, string title)
    {
        this.to = to;
        to.WriteLine($"{title,-36}{"right",6}{"top-1",8}{"top-3",8}{"log-loss",10}{"Brier",8}{"ECE",8}");
    }

    public void Line(string name, PredictionScore score) =>
        Line(name, score.Count, score.Top1, score.Top3, score.LogLoss, score.Brier, score.CalibrationError);

    /// <summary>The rows beside the data: model, fold, n, then the scores.</summary>
    public void Baselines(string file)
    {
        foreach (var row in File.ReadLines(file).Select(l => l.Split(',')).Where(r => r[1] == "pooled"))
            Line(row[0], Number(row[2]), Number(row[3]), Number(row[4]), Number(row[5]), Number(row[6]), Number(row[7]));
    }

    private void Line(string name, double count, double top1, double top3, double logLoss, double brier, double ece) => to.WriteLine(string.Create(
        CultureInfo.InvariantCulture, $"{name,-36}{Math.Round(count * top1),6}{top1,8:F4}{top3,8:F4}{logLoss,10:F4}{brier,8:F4}{ece,8:F4}"));

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
