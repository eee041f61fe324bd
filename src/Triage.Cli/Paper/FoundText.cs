using Spectre.Console;
using Triage.Notes;
using Triage.Search.Queries;

namespace Triage.Cli.Paper;

/// <summary>What was found, with the passages that matched.</summary>
internal static class FoundText
{
    private const int CountsShown = 5, PassagesShown = 2;

    public static void Write(Sheet paper, SearchResults results, Func<string, string?> takenFrom)
    {
        paper.Title(results.Total == 1 ? "1 note" : $"{results.Total} notes");
        if (results.Notice is { } notice)
            paper.Item("-", notice);
        if (results.DidYouMean is { } meant)
            paper.Item("-", $"Did you mean: {meant}");
        foreach (var (filter, counts) in results.Counts.Where(c => c.Value.Length > 0).OrderBy(c => c.Key, StringComparer.Ordinal))
            paper.Field(filter, string.Join(", ", counts.Take(CountsShown).Select(c => $"{c.Value} {c.Count}")) + (counts.Length > CountsShown ? ", …" : ""), 10);
        foreach (var hit in results.Hits)
            Hit(paper, hit, takenFrom(hit.Id));
    }

    private static void Hit(Sheet paper, SearchHit hit, string? takenFrom)
    {
        paper.Blank();
        paper.Title($"{hit.Id} {hit.Title}");
        paper.Say(string.Join(", ", new[] { hit.Kind, hit.Date is { } date ? Amounts.Date(date) : null, hit.Outcome, hit.Fix is { } fix ? $"mended by: {fix}" : null, hit.HeldJobs > 0 ? $"held in {hit.HeldJobs} jobs with this cause" : null, takenFrom is null ? null : $"from the book {takenFrom}" }.OfType<string>()), 2, Sheet.Quiet);
        foreach (var passage in hit.Passages.Take(PassagesShown))
            paper.Write(new Padder(Marked(passage, paper.IsTerminal), new(2, 0, 0, 0)));
    }

    /// <summary>Matches stand out by colour on a terminal, between ‹ and › elsewhere.</summary>
    private static Paragraph Marked(Passage passage, bool colours)
    {
        var words = new Paragraph($"{passage.Field}: ", Sheet.Quiet);
        var at = 0;
        foreach (var mark in passage.Marks)
        {
            words.Append(Flat(passage.Text[at..mark.Start]));
            var match = Flat(mark.Of(passage.Text));
            words.Append(colours ? match : $"‹{match}›", Sheet.Warning);
            at = mark.End;
        }

        return words.Append(Flat(passage.Text[at..]));
    }

    /// <summary>On one line, blanks at the ends kept.</summary>
    private static string Flat(string text) => Printable.Text(text).Replace('\n', ' ');
}
