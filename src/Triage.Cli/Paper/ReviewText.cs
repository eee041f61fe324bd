using System.Globalization;
using Spectre.Console;
using Triage.Notes;
using Triage.Workshop.Reviews;

namespace Triage.Cli.Paper;

/// <summary>Which fixes resolved which symptoms.</summary>
internal static class ReviewText
{
    public static void Write(Sheet paper, Review review, int take)
    {
        paper.Title($"{review.ClosedJobs} closed jobs: symptom and what was tried");
        var table = new Table().Border(TableBorder.Simple);
        table.AddColumn("symptom");
        table.AddColumn("reset or fix");
        foreach (var number in new[] { "tried", "worked", "90 %", "held", "came back" })
            table.AddColumn(new TableColumn(number) { Alignment = Justify.Right, NoWrap = number != "came back" });
        foreach (var row in review.Rows.Take(take))
            table.AddRow(Cell(row.Symptom), Cell(row.ActionName), Cell(row.Tried), Cell(row.Worked), Cell(Amounts.Between(row.Lower, row.Upper)), Cell(row.Held), Cell(row.CameBack));
        paper.Write(table);
        if (review.Rows.Length > take)
            paper.Say($"{review.Rows.Length - take} more rows; --take shows more.");
        if (!review.OnHearsay.IsEmpty)
            paper.Say($"Cause only told or heard of: {string.Join(", ", review.OnHearsay)}");
        paper.Say("How good the forecasts were: triage review --forecasts");
    }

    private static Text Cell(string text) => new(Printable.Line(text));

    private static Text Cell(int number) => new(number.ToString(CultureInfo.InvariantCulture));
}
