using Triage.Workshop.Exchange.Share;

namespace Triage.Cli.Paper;

/// <summary>What of one's own book was given out.</summary>
internal static class ShareText
{
    public static void Write(Sheet paper, ShareResult result)
    {
        paper.Title("Ready to be given out");
        paper.Field("place", result.Place ?? "", 18);
        paper.Field("notes", $"{result.Notes}, {result.Jobs} of them jobs", 18);
        TakeText.Count(paper, "owners removed", result.Owners);
        TakeText.Count(paper, "serials removed", result.Serials);
        if (result.Pictures > 0)
            paper.Field("photos", $"{result.Pictures}, {result.Stripped} of them told more than they show", 18);
        TakeText.Count(paper, "open jobs left out", result.OpenJobs);
        TakeText.List(paper, "Replaced in the text", result.Replaced, r => $"{r.Path}: {r.What}");
        TakeText.List(paper, "Left out", result.LeftOut, l => $"{l.Path}: {l.Why}");
        paper.Blank();
        paper.Say("Names and places that stand in no owner field are not recognised, and what a photo shows stays in it. Read it through before you give it away.");
    }
}
