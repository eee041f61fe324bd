using System.Collections.Immutable;
using Triage.Cli.Typed;
using Triage.Notes;
using Triage.Workshop.Exchange.Importing;

namespace Triage.Cli.Paper;

/// <summary>A table of past jobs: what it would bring, and what it brought.</summary>
internal static class ImportText
{
    private const int NamesShown = 8;

    public static void Write(Sheet paper, ImportPreview preview, string book)
    {
        paper.Title($"What the table would bring into the book {book}");
        Rows(paper, preview.Rows, preview.Jobs, preview.AlreadyThere, preview.Rejected);
        Notes(paper, "new", preview.NewNotes);
        Notes(paper, "known", preview.KnownNotes);
        if (!preview.Columns.IsEmpty)
            paper.Heading("What the columns become");
        foreach (var column in preview.Columns)
            paper.Field(Printable.Line(column.Column), column.Becomes, 26);
        if (!preview.Rejects.IsEmpty)
            paper.Heading("First rows that would be rejected");
        foreach (var reject in preview.Rejects.Take(NamesShown))
            paper.Item("-", $"row {reject.Row}, line {reject.Line}: {reject.Reason}");
        if (!preview.FirstNotes.IsEmpty)
            paper.Heading("The first jobs as they would read");
        foreach (var note in preview.FirstNotes)
        {
            foreach (var line in note.TrimEnd().Split('\n'))
                paper.Raw(Printable.Line($"  {line}"));
            paper.Blank();
        }

        paper.Say("Nothing is written yet. Add --write to bring it in.");
    }

    public static void Write(Sheet paper, ImportResult result)
    {
        paper.Title(result.Jobs == 0 ? "Nothing new was brought in" : "Brought in");
        Rows(paper, result.Rows, result.Jobs, result.AlreadyThere, result.Rejected);
        Notes(paper, "new", result.NewNotes);
        if (result.Place is { } place)
            paper.Field("folder", place, 18);
        if (result.RejectsFile is { } rejects)
            paper.Field("rejected rows", $"with the reasons in {rejects}", 18);
        if (result.Found == LeftOver.Continued)
            paper.Say("An earlier run had been broken off; its finished part was used.");
    }

    private static void Rows(Sheet paper, int rows, int jobs, int there, int rejected)
    {
        paper.Field("rows", $"{rows}", 18);
        paper.Field("new jobs", $"{jobs}", 18);
        paper.Field("already there", $"{there}", 18);
        paper.Field("rejected", $"{rejected}", 18);
    }

    private static void Notes(Sheet paper, string which, ImmutableArray<NewNote> notes)
    {
        foreach (var kind in notes.GroupBy(n => n.Kind))
        {
            var more = kind.Count() > NamesShown ? $" and {kind.Count() - NamesShown} more" : "";
            paper.Field($"{which} {Inputs.Word(kind.Key).Replace('-', ' ')}", $"{kind.Count()}: {string.Join(", ", kind.Take(NamesShown).Select(n => n.Name))}{more}", 18);
        }
    }
}
