using System.CommandLine;
using Triage.Cli.Paper;
using Triage.Cli.Typed;
using Triage.Workshop.Keeping;

namespace Triage.Cli.Commands;

/// <summary><c>triage backup</c>: one's own book in one file.</summary>
internal static class BackupCommand
{
    public static Command Of(Desk desk)
    {
        var file = Inputs.Text("file", "File to write, such as backup.zip; it must not be there yet.");
        var progress = desk.Progress<int>(files => $"{files} files packed");
        return desk.Command("backup", "Writes one's own book to one file, a zip with a checksum for each file; also while the bench is served.", [file], (typed, stop) =>
        {
            var result = BackingUp.BackUp(Books.Own(typed.GetValue(desk.BookOption) ?? []), typed.GetValue(file)!, desk.Clock, progress, stop);
            RefusedException.ThrowIf(result.Refused);
            desk.Sheet().Show(result, paper => KeepingText.Write(paper, result), typed.GetValue(desk.JsonOption));
            return Task.FromResult(result.Unread.IsEmpty ? ExitCode.Ok : ExitCode.CannotAccess);
        });
    }
}
