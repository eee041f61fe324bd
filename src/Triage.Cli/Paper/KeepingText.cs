using Triage.Notes;
using Triage.Workshop.Keeping;

namespace Triage.Cli.Paper;

/// <summary>What was backed up, restored, or looked over.</summary>
internal static class KeepingText
{
    public static void Write(Sheet paper, BackupResult result)
    {
        paper.Say($"{result.Files} files, {Size(result.Bytes)}, are in {result.File} ({Size(result.Packed)}). It was read back: each of them is as it was in the book.");
        TakeText.List(paper, "Missing in it", result.Unread, l => $"{l.Path}: {l.Why}");
        TakeText.List(paper, "Left out", result.LeftOut, l => $"{l.Path}: {l.Why}");
        paper.Say("Owners' names are in it. Keep it where you would keep the job sheets, on another disk than the book.");
    }

    public static void Write(Sheet paper, RestoreResult result) =>
        paper.Say($"{result.Files} files, {Size(result.Bytes)}, are back in {result.Folder}. Every one is what was backed up. Open it with --book NAME={result.Folder}; phones have to be paired anew.");

    public static void Write(Sheet paper, VerifyResult result, bool accepted)
    {
        foreach (var damage in result.Damage)
            paper.Raw(Printable.Line($"{damage.Path}: {damage.What} {damage.Instead}"));
        foreach (var path in result.Edited)
            paper.Raw(Printable.Line($"{path}: edited by hand, and reads well."));
        foreach (var path in result.Moved)
            paper.Raw(Printable.Line($"{path}: lies at another place now."));
        paper.Say($"{result.Files} files, {Size(result.Bytes)}: {Damaged(result, accepted)}{(result.New == 0 ? "" : $", {result.New} looked at for the first time")}.");
    }

    private static string Damaged(VerifyResult result, bool accepted) => result.Damage.Length switch
    {
        0 => "nothing is damaged or missing",
        1 when accepted => "one thing is accepted as it is now",
        1 => "one thing is damaged, missing or shorter than it was",
        var many => accepted ? $"{many} things are accepted as they are now" : $"{many} things are damaged, missing or shorter than they were",
    };

    private static string Size(long bytes) => bytes < 1_000_000 ? FormattableString.Invariant($"{bytes / 1e3:0} kB") : FormattableString.Invariant($"{bytes / 1e6:0.0} MB");
}
