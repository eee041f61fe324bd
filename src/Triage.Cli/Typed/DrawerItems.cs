using Triage.Notes.Kinds;
using Triage.Workshop;
using Triage.Workshop.Stock;

namespace Triage.Cli.Typed;

/// <summary>What in the drawer is meant by a few words of it: kind of part, marking, place.</summary>
internal static class DrawerItems
{
    /// <exception cref="RefusedException">None, or several.</exception>
    public static StockItem One(Bench bench, string typed)
    {
        var words = typed.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries);
        StockItem[] meant = [.. bench.Settings.Drawer.Where(i => words.Length > 0 && words.All(w => Said(bench, i).Contains(w, StringComparison.OrdinalIgnoreCase)))];
        return bench.Settings.Drawer.FirstOrDefault(i => i.Key == typed) ?? meant switch
        {
            [var only] => only,
            [] => throw new RefusedException(CommandTexts.NotInDrawer(typed)),
            _ => throw new RefusedException(CommandTexts.Ambiguous("thing in the drawer", typed, [.. meant.Select(i => $"“{i.Part} {Facts(i)}”")])),
        };
    }

    private static string Said(Bench bench, StockItem item) => $"{item.Part} {bench.Notes.Find<PartClass>(item.Part)?.Name} {Facts(item)}";

    /// <summary>Marking, place and whether it was tested, in words.</summary>
    public static string Facts(StockItem item) => $"{item.Rating ?? "no marking noted"}, {item.Where ?? "place not noted"}, {(item.Tested ? "tested good" : "not tested")}";
}
