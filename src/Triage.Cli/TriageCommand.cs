using System.CommandLine;
using Triage.Cli.Commands;
using Triage.Search.Meaning;
using Triage.Workshop.Model;

namespace Triage.Cli;

/// <summary>The <c>triage</c> command.</summary>
public static class TriageCommand
{
    /// <summary>Runs one command line.</summary>
    /// <param name="output">Results; coloured only when it is a terminal.</param>
    /// <param name="errors">What was refused, one line each: what is wrong and what to do instead.</param>
    /// <param name="meaning">Understands complaints beyond the words of the phrasings; null to go by words alone.</param>
    /// <param name="fits">What learning was fitted to before; null to fit it every time.</param>
    /// <param name="runtime">Folder for what only this user may read while a bench is served; null to keep it nowhere.</param>
    /// <param name="stop">Ends a served bench, as Ctrl-C does.</param>
    /// <returns>0 done, 1 the check found errors, 2 not understood, 3 refused, 4 changed meanwhile, 5 cannot read or write, 130 interrupted.</returns>
    public static async Task<int> RunAsync(IReadOnlyList<string> args, TextWriter output, TextWriter errors, TimeProvider clock, SentenceVectors? meaning = null, RememberedFits? fits = null, string? runtime = null, CancellationToken stop = default)
    {
        var desk = new Desk(output, errors, clock, meaning, fits, runtime);
        var typed = Root(desk).Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        return typed.Errors.Count > 0
            ? desk.Misused(typed)
            : await typed.InvokeAsync(new InvocationConfiguration { Output = output, Error = errors, EnableDefaultExceptionHandler = false }, stop);
    }

    internal static RootCommand Root(Desk desk)
    {
        var root = new RootCommand("What to look at next in a machine that nobody supports any more.")
        {
            AskCommand.Of(desk),
            TakeInCommand.Of(desk),
            ShelfCommand.Of(desk),
            JobCommand.Of(desk),
            SawCommand.Of(desk),
            TestedCommand.Of(desk),
            ReadCommand.Of(desk),
            ResetCommand.Of(desk),
            HeldCommand.Of(desk),
            RoundCommand.Of(desk),
            SkipCommand.Of(desk),
            SecuredCommand.Of(desk),
            CounterClosedCommand.Of(desk),
            BuildCommand.Of(desk),
            FixedCommand.Of(desk),
            SwappedCommand.Of(desk),
            OpenedCommand.Of(desk),
            TakenOffCommand.Of(desk),
            PoweredCommand.Of(desk),
            PartCommand.Of(desk),
            LineCommand.Of(desk),
            AgreeCommand.Of(desk),
            WaitCommand.Of(desk),
            PhotoCommand.Of(desk),
            UndoCommand.Of(desk),
            PutBackCommand.Of(desk),
            CloseCommand.Of(desk),
            FollowUpCommand.Of(desk),
            DrawerCommand.Of(desk),
            InstrumentsCommand.Of(desk),
            SettingsCommand.Of(desk),
            DrawingsCommand.Of(desk),
            FindCommand.Of(desk),
            NoteCommand.Of(desk),
            HistoryCommand.Of(desk),
            ReviewCommand.Of(desk),
            ImportCommand.Of(desk),
            TakeCommand.Of(desk),
            ShareCommand.Of(desk),
            BackupCommand.Of(desk),
            RestoreCommand.Of(desk),
            CheckCommand.Of(desk),
            VerifyCommand.Of(desk),
            MigrateCommand.Of(desk),
            ServeCommand.Of(desk),
            AddressCommand.Of(desk),
        };
        foreach (var listed in ListedCommands.Of(desk))
            root.Subcommands.Add(listed);
        root.Options.Add(desk.BookOption);
        root.Options.Add(desk.JsonOption);
        return root;
    }
}
