using System.CommandLine;
using Triage.Cli.Paper;
using Triage.Cli.Typed;
using Triage.Workshop.Keeping;

namespace Triage.Cli.Commands;

/// <summary><c>triage verify</c>: whether every file of one's own book is still what it was.</summary>
internal static class VerifyCommand
{
    public static Command Of(Desk desk)
    {
        var accept = Inputs.Flag("--accept", "Take every file as it is now for right.");
        var progress = desk.Progress<int>(files => $"{files} files looked at");
        return desk.Command("verify", "Holds every file of one's own book against its checksum: what is damaged, missing, or shorter than it was. Ends with 1 when there is any.", [accept], (typed, stop) =>
        {
            var result = Verifying.Verify(Books.Own(typed.GetValue(desk.BookOption) ?? []), desk.Clock, typed.GetValue(accept), progress, stop);
            RefusedException.ThrowIf(result.Refused);
            var accepted = typed.GetValue(accept) && result.Acceptable;
            desk.Sheet().Show(result, paper => KeepingText.Write(paper, result, accepted), typed.GetValue(desk.JsonOption));
            return Task.FromResult(result.Damage.IsEmpty || accepted ? ExitCode.Ok : ExitCode.ErrorsFound);
        });
    }
}
