using System.Collections.Immutable;
using Triage.Measurements.Parts;
using Triage.Notes.Kinds;

namespace Triage.Workshop.Stock;

/// <summary>Something in the drawer beside a part that has to be replaced.</summary>
/// <param name="Fit">The worst respect decides; never <see cref="Measurements.Parts.Fit.Unfit"/>.</param>
/// <param name="ToCheck">Respects that are for the eye, in words.</param>
public sealed record DrawerFit(StockItem Item, Fit Fit, ImmutableArray<string> ToCheck)
{
    /// <summary>Classes of part whose replacement has rules; every other is for the hand and the eye.</summary>
    private static readonly ImmutableDictionary<string, PartKind> Kinds = new Dictionary<string, PartKind>
    {
        ["carbon-resistor"] = PartKind.Resistor,
        ["metal-film-resistor"] = PartKind.Resistor,
        ["fusible-resistor"] = PartKind.FusibleResistor,
        ["film-capacitor"] = PartKind.FilmOrCeramicCapacitor,
        ["ceramic-capacitor"] = PartKind.FilmOrCeramicCapacitor,
        ["aluminium-electrolytic"] = PartKind.AluminiumElectrolytic,
        ["backup-capacitor"] = PartKind.DoubleLayerCapacitor,
        ["safety-capacitor"] = PartKind.SafetyCapacitor,
        ["fuse"] = PartKind.Fuse,
    }.ToImmutableDictionary();

    /// <summary>What is there of the class and does not speak against the rating fitted, best first.</summary>
    /// <param name="fitted">As the device's parts list has it; none said: everything of the class is for the eye.</param>
    public static ImmutableArray<DrawerFit> Of(IEnumerable<StockItem> drawer, string part, IReadOnlyCollection<DevicePart> fitted) =>
    [
        .. from item in drawer
           where item.Part == part && item.Count > 0
           let fit = fitted.Where(f => f.Rating is not null).Select(f => Judged(item, f.Rating!)).DefaultIfEmpty(new(item, Fit.Check, ["the rating fitted is not on the list"])).MinBy(f => f.Fit)!
           where fit.Fit != Fit.Unfit
           orderby fit.Fit, fitted.Any(f => f.Rating is not null && f.Rating == item.Rating) descending, item.Tested descending
           select fit,
    ];

    private static DrawerFit Judged(StockItem item, string fitted)
    {
        if (!Kinds.TryGetValue(item.Part, out var kind))
            return ByHand(item, fitted, "there is no rule for this kind of part");
        if (item.Rating is null)
            return ByHand(item, fitted, "no marking is noted");
        var remarks = ReplacementFit.Judge(kind, RatingText.Read(fitted), RatingText.Read(item.Rating));
        return remarks.IsEmpty
            ? ByHand(item, fitted, "the markings say nothing that can be compared")
            : new(item, ReplacementFit.Overall(remarks), [.. remarks.Where(r => r.Fit == Fit.Check).Select(r => $"{r.Respect}: {r.Why}")]);
    }

    /// <summary>Even an equal marking is no proof: who wrote it down may have left out what matters.</summary>
    private static DrawerFit ByHand(StockItem item, string fitted, string why) =>
        new(item, Fit.Check, [$"not compared, {why}: check by hand. {(item.Rating == fitted ? "It is marked as the one fitted." : $"Fitted is {fitted}.")}"]);
}
