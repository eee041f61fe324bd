using System.Collections.Immutable;
using Triage.Cli.Typed;
using Triage.Measurements.Parts;
using Triage.Notes.Kinds;
using Triage.Workshop;
using Triage.Workshop.Answers;
using Triage.Workshop.Stock;

namespace Triage.Cli.Paper;

/// <summary>Parts on hand.</summary>
internal static class DrawerText
{
    public static void Write(Sheet paper, Bench bench, IReadOnlyCollection<StockItem> items)
    {
        if (items.Count == 0)
            paper.Say("Nothing is listed. Put parts in with triage drawer put.");
        foreach (var kind in items.GroupBy(i => i.Part).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            paper.Title(bench.Notes.Find<PartClass>(kind.Key)?.Name ?? $"{kind.Key} (no note of this kind)");
            foreach (var item in kind)
                paper.Item($"{item.Count,4}", DrawerItems.Facts(item));
        }
    }

    /// <summary>What a job needs, and what of it lies here.</summary>
    public static void Write(Sheet paper, Job job, NeededPart? needed, ImmutableArray<DrawerFit> fits)
    {
        if (needed is null)
        {
            paper.Say($"{job.Id} {job.Name}: no part would mend a likely cause.");
            return;
        }

        paper.Title($"{needed.Class.Name}, for {needed.Cause.Name}");
        Cautions.Write(paper, needed.Class.Cautions);
        foreach (var fitted in needed.Fitted)
            paper.Field("fitted", $"{fitted.Designator ?? needed.Class.Name}: {fitted.Rating ?? "rating not on the list, read it off the part"}");
        foreach (var must in needed.Class.MustMatch)
            paper.Field("must match", must);
        foreach (var must in needed.Class.MustNotChange)
            paper.Field("not to change", must);
        paper.Heading(fits.IsEmpty ? "None of it in the drawer" : "In the drawer");
        foreach (var fit in fits)
        {
            paper.Item($"{fit.Item.Count,4}", $"{DrawerItems.Facts(fit.Item)}: {(fit.Fit == Fit.Check ? "to be looked at" : "fits")}");
            foreach (var check in fit.ToCheck)
                paper.Item("look first:", check, 7);
        }
    }
}

/// <summary>What --json says of the drawer.</summary>
internal sealed record DrawerPage(ImmutableArray<StockItem> Items);

/// <summary>What --json says of the part that a job needs.</summary>
/// <param name="Part">Part class id; null when no part would mend a likely cause.</param>
internal sealed record NeededPage(string Job, string? Part, ImmutableArray<DevicePart> Fitted, ImmutableArray<DrawerFit> InDrawer);
