using System.CommandLine;
using Triage.Cli.Paper;
using Triage.Cli.Typed;
using Triage.Workshop.Importing;
using Triage.Workshop.Steps;

namespace Triage.Cli.Commands;

/// <summary><c>triage import</c>: brings a table of past jobs into the first own book. Without --write it only shows what would come.</summary>
internal static class ImportCommand
{
    public static Command Of(Desk desk)
    {
        var table = Inputs.Text("table", "CSV file of past jobs, the names of the columns in its first line.");
        var map = new Option<string>("--map") { Description = "File that says which column is what.", Required = true };
        var write = Inputs.Flag("--write", "Bring it in; without it nothing is written.");
        return desk.Command("import", "Shows what a table of past jobs would bring into the book, and with --write brings it in.", [table, map, write], session =>
        {
            var reading = ColumnMapFile.Read(session.Get(map)!);
            var columns = reading.Map ?? throw new RefusedException(reading.Refused!);
            var book = session.Books.FirstOrDefault(b => b.Writable) ?? throw new RefusedException(CommandTexts.NoOwnBook);
            return session.Get(write)
                ? Written(session, Import.Run(session.Text(table), columns, book.Folder, open: session.Bench.Notes))
                : Previewed(session, Import.Preview(session.Text(table), columns, book.Folder, session.Bench.Notes), book.Name);
        });
    }

    private static ExitCode Previewed(Session session, ImportPreview preview, string book)
    {
        Refuse(preview.Refused);
        return session.Show(preview, paper => ImportText.Write(paper, preview, book));
    }

    private static ExitCode Written(Session session, ImportResult result)
    {
        Refuse(result.Refused);
        return session.Show(result, paper => ImportText.Write(paper, result));
    }

    private static void Refuse(Refusal? refused)
    {
        if (refused is not null)
            throw new RefusedException(refused);
    }
}
