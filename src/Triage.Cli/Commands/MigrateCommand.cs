using System.Collections.Immutable;
using System.CommandLine;
using Triage.Cli.Paper;
using Triage.Cli.Typed;
using Triage.Workshop.Books;

namespace Triage.Cli.Commands;

/// <summary><c>triage migrate</c>: one's own notes of an older format in the present one. Without --write it only shows what would change.</summary>
internal static class MigrateCommand
{
    public static Command Of(Desk desk)
    {
        var write = Inputs.Flag("--write", "Copy the notes to a folder beside the book and change them; without it nothing is written.");
        return desk.Command("migrate", "Shows which notes are of an older format, and with --write brings them to the present one.", [write], (typed, _) =>
        {
            var own = Books.Of(typed.GetValue(desk.BookOption) ?? []).Where(b => b.Trust == Trust.Own);
            ImmutableArray<MigratedBook> books = [.. own.Select(b => typed.GetValue(write) ? Migration.Write(b, desk.Clock) : Migration.Preview(b))];
            desk.Sheet().Show(new MigratePage(books), paper => MigrateText.Write(paper, books), typed.GetValue(desk.JsonOption));
            RefusedException.ThrowIf(books.Select(b => b.Refused).FirstOrDefault(r => r is not null));
            return Task.FromResult(ExitCode.Ok);
        });
    }
}

/// <summary>What --json says of a migration.</summary>
internal sealed record MigratePage(ImmutableArray<MigratedBook> Books);
