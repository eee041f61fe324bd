using System.Collections.Immutable;
using Triage.Notes;
using Triage.Workshop.Books;

namespace Triage.Cli.Paper;

/// <summary>What a migration changes, line by line.</summary>
internal static class MigrateText
{
    public static void Write(Sheet paper, ImmutableArray<MigratedBook> books)
    {
        foreach (var book in books)
        {
            foreach (var note in book.Notes.Where(_ => book.Backup is null))
                paper.Raw(Printable.Line($"{book.Book}/{note.Path}:{note.Line}: {note.Before ?? "(nothing)"} → {note.After}"));
            foreach (var left in book.Left)
                paper.Raw(Printable.Line($"{book.Book}/{left.Path}:{left.Line} stays as it is: {left.Why}"));
            paper.Raw(Printable.Line(Sum(book)));
        }
    }

    private static string Sum(MigratedBook book) => book switch
    {
        { Notes.IsEmpty: true } => $"{book.Book}: nothing to change.",
        { Backup: { } backup } => $"{book.Book}: {book.Notes.Length} notes changed; as they were they lie in {backup}.",
        _ => $"{book.Book}: {book.Notes.Length} notes would change. Nothing was written; --write changes them and keeps a copy.",
    };
}
