using System.Globalization;
using Spectre.Console;
using Triage.Workshop.Reviews;

namespace Triage.Cli.Paper;

/// <summary>How good the forecasts were.</summary>
internal static class ForecastText
{
    public static void Write(Sheet paper, ForecastReview review)
    {
        paper.Title($"{review.Jobs} closed jobs, each forecast before it was counted");
        if (review.Scores.IsEmpty)
        {
            paper.Say("No closed job can be forecast yet: close jobs with their cause.");
            return;
        }

        var scores = Numbers("forecast by", ["first", "in 3", "log-loss", "Brier", "off by"]);
        foreach (var (name, score) in review.Scores)
            scores.AddRow([name, Share(score.Top1), Share(score.Top3), Amount(score.LogLoss), Amount(score.Brier), Share(score.CalibrationError)]);
        paper.Write(scores);
        paper.Say("first: the true cause came first; in 3: among the first three; log-loss and Brier: less is better; off by: how sure against how often right.", style: Sheet.Quiet);
        paper.Heading("How sure the bench was, and how often it was right");
        var bins = Numbers("sure", ["jobs", "right", "90 %"]);
        foreach (var bin in review.Reliability)
            bins.AddRow([Share(bin.Confidence), bin.Count.ToString(CultureInfo.InvariantCulture), Share(bin.Right), Amounts.Between(bin.Interval.Lower, bin.Interval.Upper)]);
        paper.Write(bins);
        foreach (var remark in review.Remarks)
            paper.Say(remark);
    }

    private static Table Numbers(string first, string[] rest)
    {
        var table = new Table().Border(TableBorder.Simple);
        table.AddColumn(first);
        foreach (var number in rest)
            table.AddColumn(new TableColumn(number) { Alignment = Justify.Right, NoWrap = true });
        return table;
    }

    private static string Share(double share) => string.Create(CultureInfo.InvariantCulture, $"{100 * share:0.#} %");

    private static string Amount(double amount) => amount.ToString("0.000", CultureInfo.InvariantCulture);
}
