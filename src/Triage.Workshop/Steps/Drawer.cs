using System.Globalization;
using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Notes.Parsing;
using Triage.Notes.Writing;
using Triage.Workshop.Knowledge;
using Triage.Workshop.Stock;

namespace Triage.Workshop.Steps;

/// <summary>Parts on hand: put in, counted, taken out for a job. A count never falls below 0.</summary>
public sealed class Drawer
{
    private readonly LiveBooks bench;
    private readonly SettingsEditing setup;
    private readonly JobNotes notes;

    internal Drawer(LiveBooks bench, SettingsEditing setup) => (this.bench, this.setup, notes) = (bench, setup, new(bench));

    /// <summary>Puts parts in; more of what lies there already are added to it.</summary>
    public Refusal? Add(StockItem item)
    {
        var now = bench.Current;
        if (now.Notes.Find<PartClass>(item.Part) is null)
            return WorkshopRefusals.NoSuch("part class", item.Part, Nearest.To(item.Part, now.Notes.Of<PartClass>().Select(p => p.Id)) is { } near ? [near] : []);
        return item.Count < 1 ? WorkshopRefusals.NothingSaid("number of parts above 0") : setup.Change(null, (held, text) =>
            At(held, item.Key) is >= 0 and var at ? Set(text, at, Moved(held.Drawer[at], item.Count)) : Set(text, null, Moved(item with { Count = 0 }, item.Count)));
    }

    /// <summary>Puts some more of it in, or takes some out.</summary>
    /// <param name="key">See <see cref="StockItem.Key"/>.</param>
    public Refusal? Move(string key, int by) => Changed(key, item => Moved(item, by));

    /// <summary>All of it were tested and found good, or not.</summary>
    public Refusal? Test(string key, bool good) => Changed(key, item => new(item with { Tested = good }, null));

    /// <summary>Takes it off the list.</summary>
    public Refusal? Remove(string key) =>
        setup.Change(null, (held, text) => At(held, key) is >= 0 and var at ? text.Remove([StockList.Field, Place(at)]) : Gone(key));

    /// <summary>Takes one out for a job: recorded there as arrived, or as tested good when it was.</summary>
    public StepResult Take(string job, string key)
    {
        if (bench.Current.Settings.Drawer.FirstOrDefault(i => i.Key == key) is not { Count: > 0 } item)
            return new() { Refused = Gone(key) };
        if (Move(key, -1) is { } refused)
            return new() { Refused = refused };
        var taken = notes.Append(job, item.Taken with { At = bench.Clock.GetLocalNow() });
        if (taken.Refused is not null)
            Move(key, 1);
        return taken;
    }

    /// <summary>One whose taking was taken back lies in the drawer again.</summary>
    internal StepResult Returned(StepResult undone) => Counted(undone, undone.TakenBack, 1);

    /// <summary>One whose taking was put back is taken out again.</summary>
    internal StepResult TakenAgain(StepResult done, LogEntry entry) => Counted(done, entry, -1);

    /// <summary>The job's log has been written: whatever stands in the way here is said, and keeps nothing from it.</summary>
    private StepResult Counted(StepResult step, LogEntry? entry, int by)
    {
        if (step.Refused is not null || entry is not PartMoved { FromDrawer: true } taken)
            return step;
        var left = 0;
        var refused = setup.Change(null, (held, text) =>
        {
            if (held.Drawer.ToList().FindIndex(i => i.IsIn(taken)) is not (>= 0 and var at))
                return WorkshopRefusals.NotInDrawer(taken.Part);
            left = held.Drawer[at].Count + by;
            return Set(text, at, Moved(held.Drawer[at], by));
        });
        return step with { Remarks = [.. step.Remarks, refused is null ? DrawerTexts.Counted(by, left) : DrawerTexts.NotCounted(by, taken, refused)] };
    }

    private Refusal? Changed(string key, Func<StockItem, Item> change) =>
        setup.Change(null, (held, text) => At(held, key) is >= 0 and var at ? Set(text, at, change(held.Drawer[at])) : Gone(key));

    private static TextEdit Set(NoteText text, int? at, Item item) =>
        item.Refused is { } refused ? refused
        : at is { } place ? text.Set([StockList.Field, Place(place)], item.After!.Written())
        : text.Append([StockList.Field], item.After!.Written());

    private static Item Moved(StockItem item, int by) => ((long)item.Count + by) switch
    {
        < 0 => new(null, WorkshopRefusals.TooFewInDrawer(item.Part, item.Count, -by)),
        > StockItem.Most => new(null, WorkshopRefusals.TooManyForDrawer(StockItem.Most)),
        var count => new(item with { Count = (int)count }, null),
    };

    private static int At(BenchSettings held, string key) => held.Drawer.ToList().FindIndex(i => i.Key == key);

    private static string Place(int at) => at.ToString(CultureInfo.InvariantCulture);

    private static Refusal Gone(string key) => WorkshopRefusals.NotInDrawer(key.Split('|')[0]);

    /// <summary>An entry after a change, or why there is none.</summary>
    private sealed record Item(StockItem? After, Refusal? Refused);
}
