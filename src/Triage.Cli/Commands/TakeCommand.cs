using System.Collections.Immutable;
using System.CommandLine;
using Triage.Cli.Paper;
using Triage.Cli.Typed;
using Triage.Workshop.Books;
using Triage.Workshop.Exchange.Take;

namespace Triage.Cli.Commands;

/// <summary><c>triage take</c>: somebody else's book, kept apart from one's own. Without --write it only shows what would come.</summary>
internal static class TakeCommand
{
    public static Command Of(Desk desk)
    {
        var from = new Argument<string?>("from") { Description = "Folder or zip with somebody else's book. None: lists the books taken.", Arity = ArgumentArity.ZeroOrOne };
        var name = Inputs.OptionalText("--as", "What to call it here: lower case letters, digits, hyphens.");
        var trust = Inputs.OptionalChoice<Trust>("--trust", "How far its jobs are believed; an own book is opened with --book instead.");
        var remove = Inputs.OptionalText("--remove", "Takes the book of this name away as a whole.");
        var write = Inputs.Flag("--write", "Take it; without it nothing is written.");
        var progress = desk.Progress<int>(files => $"{files} files copied");
        return desk.Command("take", "Shows what somebody else's book would bring, and with --write takes it beside one's own.", [from, name, trust, remove, write], session =>
        {
            if (session.Get(remove) is { } gone)
                return Removed(session, gone);
            if (session.Get(from) is not { Length: > 0 } parcel)
                return session.Show(new TakenPage([.. TakenBook.Beside(session.OwnBook.Folder)]), paper => TakeText.Write(paper, TakenBook.Beside(session.OwnBook.Folder)));
            var called = session.Get(name) ?? throw new RefusedException(CommandTexts.NoNameToTake);
            if (session.Get(trust) is not (Trust.Known or Trust.Stranger))
                throw new RefusedException(CommandTexts.NoTrustToTake);
            var result = session.Get(write)
                ? Taking.Take(parcel, called, session.Get(trust)!.Value, session.OwnBook, session.Books, session.Bench.Notes, desk.Clock.GetUtcNow(), progress, session.Stop)
                : Taking.Preview(parcel, called, session.Bench.Notes, session.Stop);
            RefusedException.ThrowIf(result.Refused);
            return session.Show(result, paper => TakeText.Write(paper, result, called, session.Get(trust)!.Value));
        });
    }

    private static ExitCode Removed(Session session, string name)
    {
        RefusedException.ThrowIf(Taking.Remove(name, session.OwnBook.Folder));
        return session.Show(new TakenPage([.. TakenBook.Beside(session.OwnBook.Folder)]), paper => paper.Say($"The book “{name}” is gone, with everything that came from it."));
    }
}

/// <summary>What --json says of the books taken.</summary>
internal sealed record TakenPage(ImmutableArray<TakenBook> Books);
