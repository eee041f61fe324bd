using Spectre.Console;
using Triage.Cli.Typed;
using Triage.Notes;
using Triage.Workshop.Answers;

namespace Triage.Cli.Paper;

/// <summary>Causes with probability, interval and the reason in words; decibans and jobs where asked for.</summary>
internal static class CauseRows
{
    private const int Shown = 6;

    /// <summary>A cause less probable than this is only counted.</summary>
    private const double LeastShown = 0.01;

    /// <param name="takenFrom">The book a job was taken from; null for one's own.</param>
    public static void Write(Sheet paper, IReadOnlyList<RankedCause> causes, bool works, bool numbers, Func<string, string?> takenFrom)
    {
        paper.Heading(works ? "It works. What it was, with 90 % intervals" : "Causes, with 90 % intervals");
        var rows = causes.Take(Shown).Where((c, i) => i < 3 || c.Probability >= LeastShown).ToList();
        foreach (var cause in rows)
        {
            paper.Write(Row(cause, numbers, takenFrom));
            if (numbers)
                Numbers(paper, cause, takenFrom);
        }

        if (causes.Count > rows.Count)
            paper.Say($"{causes.Count - rows.Count} more, {Amounts.Percent(causes.Skip(rows.Count).Sum(c => c.Probability))} together.", 2, Sheet.Quiet);
    }

    private static Grid Row(RankedCause cause, bool numbers, Func<string, string?> takenFrom)
    {
        var grid = new Grid();
        grid.AddColumn(new GridColumn { Width = 7, NoWrap = true, Alignment = Justify.Right, Padding = new(0, 0, 2, 0) });
        grid.AddColumn(new GridColumn { Width = 9, NoWrap = true, Alignment = Justify.Right, Padding = new(0, 0, 2, 0) });
        grid.AddColumn(new GridColumn { Padding = new(0, 0, 0, 0) });
        var words = new Paragraph(Printable.Line(cause.Name), Sheet.Strong);
        if (numbers)
            words.Append($" ({cause.Fault})");
        if (cause.Why.Length > 0)
            words.Append("\n" + Printable.Line(cause.Why), Sheet.Quiet);
        foreach (var book in cause.Jobs.Select(j => takenFrom(j.Job)).OfType<string>().GroupBy(b => b))
            words.Append(FormattableString.Invariant($"\n{book.Count()} of the {cause.Jobs.Length} jobs behind it from the book {book.Key}"), Sheet.Quiet);
        grid.AddRow(new Text(Amounts.Percent(cause.Probability), Sheet.Strong), new Text(Amounts.Between(cause.Lower, cause.Upper)), words);
        return grid;
    }

    private static void Numbers(Sheet paper, RankedCause cause, Func<string, string?> takenFrom)
    {
        foreach (var weight in cause.Weights)
            paper.Item(FormattableString.Invariant($"{weight.Decibans,6:+0.0;-0.0;0.0} dban"), weight.Words, 9);
        foreach (var job in cause.Jobs)
            paper.Item("  job", $"{job.Job} {job.Name} ({job.Machine}, {Inputs.Word(job.Grade)}){Without(job)}{(takenFrom(job.Job) is { } book ? $"; from the book {book}" : "")}", 9);
    }

    private static string Without(JobBehind job) => job.Without is { } chance ? $"; without it {Amounts.Percent(chance)}" : "";
}
