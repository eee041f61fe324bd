using Triage.Notes.Kinds;

namespace Triage.Workshop.Steps;

/// <summary>What is said of the drawer when a taking is taken back or put back.</summary>
internal static class DrawerTexts
{
    public static string Counted(int by, int left) => by > 0
        ? FormattableString.Invariant($"It lies in the drawer again: {left} there now.")
        : FormattableString.Invariant($"It is taken out of the drawer again: {left} left there.");

    public static string NotCounted(int by, PartMoved taken, Refusal why)
    {
        var what = string.Join(" ", new[] { taken.Part, taken.Note }.OfType<string>());
        return why.Kind switch
        {
            RefusalKind.NotFound when by > 0 => $"The drawer does not list {what} any more: put it in anew if it goes back there.",
            RefusalKind.NotFound => $"The drawer lists no {what} to take: count there what is left.",
            _ => $"The drawer still counts as before: {why}",
        };
    }
}
