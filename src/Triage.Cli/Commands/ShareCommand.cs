using System.CommandLine;
using Triage.Cli.Paper;
using Triage.Cli.Typed;
using Triage.Workshop.Exchange.Share;

namespace Triage.Cli.Commands;

/// <summary><c>triage share</c>: one's own book for others, without owners.</summary>
internal static class ShareCommand
{
    public static Command Of(Desk desk)
    {
        var place = new Option<string>("--out") { Description = "Folder or FILE.zip to write to; it must not be there yet.", Required = true };
        var open = Inputs.Flag("--open-jobs", "Give out jobs that are not closed as well.");
        var progress = desk.Progress<int>(files => $"{files} files written");
        return desk.Command("share", "Writes one's own book for others: without owner, serial number, contact, and what photos tell beside the picture.", [place, open], session =>
        {
            var result = GivingOut.Share(session.OwnBook, session.Get(place)!, session.Get(open), progress, session.Stop);
            RefusedException.ThrowIf(result.Refused);
            return session.Show(result, paper => ShareText.Write(paper, result));
        });
    }
}
