using System.CommandLine;
using Triage.Cli.Paper;
using Triage.Cli.Typed;
using Triage.Workshop;
using Triage.Workshop.Exchange.Importing;

namespace Triage.Cli.Commands;

/// <summary><c>triage import</c>: brings a table of past jobs into the first own book. Without --write it only shows what would come.</summary>
internal static class ImportCommand
{
    public static Command Of(Desk desk)
    {
        var table = Inputs.Text("table", "CSV file of past jobs, the names of the columns in its first line.");
        var map = Inputs.OptionalText("--map", "File that says which column is what.");
        var suggest = Inputs.Flag("--suggest", "Print a first column map for this table, to be read and mended.");
        var write = Inputs.Flag("--write", "Bring it in; without it nothing is written.");
        var progress = desk.Progress<ImportProgress>(p => $"{p.Rows} rows read, {p.Jobs} jobs staged, {p.Rejected} rejected");
        return desk.Command("import", "Shows what a table of past jobs would bring into the book, and with --write brings it in.", [table, map, suggest, write], session =>
        {
            if (session.Get(suggest))
                return Suggested(session, SuggestedMap.Of(session.Text(table)));
            var reading = ColumnMapFile.Read(session.Get(map) ?? throw new RefusedException(CommandTexts.NoMap));
            var columns = reading.Map ?? throw new RefusedException(reading.Refused!);
            var book = session.OwnBook;
            return session.Get(write)
                ? Written(session, Import.Run(session.Text(table), columns, book.Folder, progress, session.Bench.Notes, session.Stop))
                : Previewed(session, Import.Preview(session.Text(table), columns, book.Folder, session.Bench.Notes, session.Stop), book.Name);
        });
    }

    private static ExitCode Suggested(Session session, (string? Json, Refusal? Refused) map)
    {
        RefusedException.ThrowIf(map.Refused);
        return session.Print(map.Json!);
    }

    private static ExitCode Previewed(Session session, ImportPreview preview, string book)
    {
        RefusedException.ThrowIf(preview.Refused);
        return session.Show(preview, paper => ImportText.Write(paper, preview, book));
    }

    private static ExitCode Written(Session session, ImportResult result)
    {
        RefusedException.ThrowIf(result.Refused);
        return session.Show(result, paper => ImportText.Write(paper, result));
    }
}
