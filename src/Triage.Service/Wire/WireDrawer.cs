using System.Collections.Immutable;
using Triage.Measurements.Parts;
using Triage.Notes.Kinds;
using Triage.Workshop;
using Triage.Workshop.Answers;
using Triage.Workshop.Stock;

namespace Triage.Service.Wire;

/// <summary>Parts on hand.</summary>
internal sealed record WireDrawer(ImmutableArray<WireStock> Items)
{
    public static WireDrawer Of(Bench bench) => new([.. bench.Settings.Drawer.Select(i => WireStock.Of(i, bench))]);
}

/// <summary>Parts of one kind lying together.</summary>
/// <param name="Item">What to send to mean these.</param>
/// <param name="Part">Part class id.</param>
internal sealed record WireStock(string Item, string Part, string PartName, int Count)
{
    public string? Rating { get; init; }

    public string? Where { get; init; }

    /// <summary>Each was tested and found good.</summary>
    public required bool Tested { get; init; }

    public static WireStock Of(StockItem item, Bench bench) => new(item.Key, item.Part, bench.Notes.Find<PartClass>(item.Part)?.Name ?? item.Part, item.Count)
    {
        Rating = item.Rating,
        Where = item.Where,
        Tested = item.Tested,
    };
}

/// <summary>What in the drawer may go in for a part; never what does not fit.</summary>
/// <param name="ToCheck">What is for the eye, in words.</param>
internal sealed record WireFit(WireStock Stock, Fit Fit, ImmutableArray<string> ToCheck)
{
    public static WireFit Of(DrawerFit fit, Bench bench) => new(WireStock.Of(fit.Item, bench), fit.Fit, fit.ToCheck);
}

/// <summary>The part that mending the likeliest cause takes.</summary>
/// <param name="Cause">Fault id.</param>
/// <param name="Fitted">Where the machine has it and what is marked on it.</param>
internal sealed record WireNeededPart(string Cause, string CauseName, double Probability, string Part, string PartName, ImmutableArray<WireFitted> Fitted)
{
    public required ImmutableArray<string> MustMatch { get; init; }

    public required ImmutableArray<string> MayBeBetter { get; init; }

    public required ImmutableArray<string> MustNotChange { get; init; }

    public required ImmutableArray<string> NewCanBeBad { get; init; }

    public required ImmutableArray<WireFit> InDrawer { get; init; }

    public static WireNeededPart Of(NeededPart needed, Bench bench) =>
        new(needed.Cause.Fault, needed.Cause.Name, needed.Cause.Probability, needed.Class.Id, needed.Class.Name, [.. needed.Fitted.Select(f => new WireFitted(f.Designator, f.Rating, f.Where))])
        {
            MustMatch = needed.Class.MustMatch,
            MayBeBetter = needed.Class.MayBeBetter,
            MustNotChange = needed.Class.MustNotChange,
            NewCanBeBad = needed.Class.NewCanBeBad,
            InDrawer = [.. needed.InDrawer(bench.Settings).Select(f => WireFit.Of(f, bench))],
        };
}

internal sealed record WireFitted(string? Designator, string? Rating, string? Where);

/// <param name="Part">Part class id.</param>
/// <param name="Count">How many are put in, 1 or more.</param>
internal sealed record StockBody(string Part, int Count, string? Rating = null, string? Where = null)
{
    public bool? Tested { get; init; }

    public StockItem AsItem() => new(Part ?? "", Count) { Rating = Said(Rating), Where = Said(Where), Tested = Tested ?? false };

    private static string? Said(string? words) => string.IsNullOrWhiteSpace(words) ? null : words.Trim();
}

/// <param name="By">How many more lie there now; below 0 for fewer.</param>
internal sealed record StockMovedBody(string Item, int By);

internal sealed record StockTestedBody(string Item, bool Good);

/// <param name="Item">As the drawer's list names it.</param>
internal sealed record StockTakenBody(string Item);
