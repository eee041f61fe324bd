using System.Globalization;
using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Notes.Writing;
using Triage.Workshop.Steps;

namespace Triage.Workshop.Stock;

/// <summary>Parts on hand: put in, counted, taken out for a job. A count never falls below 0.</summary>
public sealed class Drawer
{
    private readonly LiveBench bench;

    internal Drawer(LiveBench bench) => this.bench = bench;

    /// <summary>Puts parts in; more of what lies there already are added to it.</summary>
    public Refusal? Add(StockItem item)
    {
        var now = bench.Current;
        if (now.Notes.Find<PartClass>(item.Part) is null)
            return WorkshopRefusals.NoSuch("part class", item.Part, Nearest.To(item.Part, now.Notes.Of<PartClass>().Select(p => p.Id)) is { } near ? [near] : []);
        return item.Count < 1 ? WorkshopRefusals.NothingSaid("number of parts above 0")
            : At(item.Key) >= 0 ? Move(item.Key, item.Count)
            : bench.Setup.Change(null, text => text.Append([StockList.Field], item.Written()));
    }

    /// <summary>Puts some more of it in, or takes some out.</summary>
    /// <param name="key">See <see cref="StockItem.Key"/>.</param>
    public Refusal? Move(string key, int by) => Changed(key, item => item.Count + by < 0 ? null : item with { Count = item.Count + by });

    /// <summary>All of it were tested and found good, or not.</summary>
    public Refusal? Test(string key, bool good) => Changed(key, item => item with { Tested = good });

    /// <summary>Takes it off the list.</summary>
    public Refusal? Remove(string key) =>
        At(key) is var at && at < 0 ? Gone(key) : bench.Setup.Change(bench.Setup.Version, text => text.Remove([StockList.Field, Place(at)]));

    /// <summary>Takes one out for a job: recorded there as arrived, or as tested good when it was.</summary>
    public StepResult Take(string job, string key)
    {
        if (At(key) is var at && at < 0)
            return new() { Refused = Gone(key) };
        var item = bench.Current.Settings.Drawer[at];
        if (Move(key, -1) is { } refused)
            return new() { Refused = refused };
        var from = item.Where is null ? "the drawer" : $"the drawer, {item.Where}";
        var taken = bench.Steps.PartMoved(job, new(default, item.Part, item.Tested ? PartState.TestedGood : PartState.Arrived) { Price = 0, From = from, Note = item.Rating });
        if (taken.Refused is not null)
            Move(key, 1);
        return taken;
    }

    private Refusal? Changed(string key, Func<StockItem, StockItem?> change)
    {
        var version = bench.Setup.Version;
        return At(key) is var at && at >= 0 && change(bench.Current.Settings.Drawer[at]) is { } after
            ? bench.Setup.Change(version, text => text.Set([StockList.Field, Place(at)], after.Written()))
            : Gone(key);
    }

    private int At(string key) => bench.Current.Settings.Drawer.ToList().FindIndex(i => i.Key == key);

    private static string Place(int at) => at.ToString(CultureInfo.InvariantCulture);

    private static Refusal Gone(string key) => WorkshopRefusals.NotInDrawer(key.Split('|')[0]);
}
