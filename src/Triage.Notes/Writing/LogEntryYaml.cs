using Triage.Notes.Kinds;
using Triage.Notes.Parsing;

namespace Triage.Notes.Writing;

/// <summary>Writes one entry of a job's log as a group in braces on one line.</summary>
public static class LogEntryYaml
{
    public static YamlFields Of(LogEntry entry) =>
        Said(new FieldWriter().Date("at", entry.At), entry).Text("note", entry.Note).Texts("photos", entry.Photos).OnOneLine;

    private static FieldWriter Said(FieldWriter fields, LogEntry entry) => entry switch
    {
        Saw saw => fields.Text("saw", saw.Finding).Text("value", saw.Value).Texts("when", saw.When)
            .Number("watched", saw.WatchedMinutes).Number("sure", saw.Sure).Mark("comes-and-goes", saw.ComesAndGoes).Text("words", saw.Words),
        Tested tested => fields.Text("tested", tested.Test).Text("outcome", tested.Outcome),
        Read read => fields.Text("read", read.Text).Text("from", read.From).Text("to", read.To).Text("mode", read.Mode)
            .Text("value", read.Value).Text("power", read.Power).Text("load", read.Load).Text("instrument", read.Instrument),
        ResetTried reset => fields.Text("reset", reset.Reset).Word<Effect>("effect", reset.Effect),
        Fixed fix => fields.Text("fixed", fix.Fix).Word<Effect>("effect", fix.Effect).Flag("tested-before", fix.TestedBefore),
        Swapped swap => fields.Text("swapped", swap.Part).Text("fix", swap.Fix).Word<Effect>("effect", swap.Effect)
            .Word("old-back", OldBack(swap.OldBack)),
        Held held => fields.Text("held", held.Action).Flag("still-works", held.StillWorks).Text("after", held.After),
        Opened opened => fields.Text(opened.Shut ? "shut" : "opened", opened.Step),
        TakenOff taken => fields.Text(taken.BackOn ? "back-on" : "taken-off", taken.What).Text("where", taken.Where),
        Powered powered => fields.Word<PowerStage>("power", powered.Stage).Text("current", powered.Current),
        PartMoved part => fields.Text("part", part.Part).Word<PartState>("state", part.State).Number("price", part.Price)
            .Number("shipping", part.Shipping).Number("lead-days", part.LeadDays).Text("from", part.From).Text("date-code", part.DateCode)
            .Mark("from-drawer", part.FromDrawer),
        Secured secured => fields.Text("secured", secured.Protect).Flag("done", secured.Done),
        Skipped skipped => fields.Text("skipped", skipped.Step).Word<SkipReason>("why", skipped.Why),
        RoundDone round => fields.Text("round", round.Round),
        CounterClosed => fields.Word<CounterState>("counter", CounterState.Closed),
        QuickLine line => fields.Text("line", line.Text),
        _ => throw new ArgumentOutOfRangeException(nameof(entry)),
    };

    private static OldPartBack? OldBack(bool? returned) => returned switch
    {
        true => OldPartBack.FaultReturned,
        false => OldPartBack.StayedAway,
        null => null,
    };
}
