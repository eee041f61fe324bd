using System.CommandLine;
using Triage.Cli.Paper;
using Triage.Cli.Typed;
using Triage.Workshop.Keeping;

namespace Triage.Cli.Commands;

/// <summary><c>triage restore</c>: a backup in a folder of its own. It opens no book: there may be none any more.</summary>
internal static class RestoreCommand
{
    public static Command Of(Desk desk)
    {
        var file = Inputs.Text("file", "A file that triage backup wrote.");
        var into = new Option<string>("--into") { Description = "Folder to restore to; it must not be there yet, or be empty.", Required = true };
        var progress = desk.Progress<int>(files => $"{files} files restored");
        return desk.Command("restore", "Puts a backup back into a new folder. Each file is held against its checksum; nothing is overwritten.", [file, into], (typed, stop) =>
        {
            var result = Restoring.Restore(typed.GetValue(file)!, typed.GetValue(into)!, progress, stop);
            RefusedException.ThrowIf(result.Refused);
            return Task.FromResult(desk.Sheet().Show(result, paper => KeepingText.Write(paper, result), typed.GetValue(desk.JsonOption)));
        });
    }
}
