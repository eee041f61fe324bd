using Triage.Notes.Kinds;

namespace Triage.Notes.Parsing;

/// <summary>Reads one entry of a job's log; what it is shows by the field that names it.</summary>
internal static class ReadLogEntry
{
    /// <param name="machine">Device or class id of the job; null when neither has a note.</param>
    public static LogEntry From(FieldReader fields, string? machine)
    {
        var at = fields.NeededDate("at");
        var entry = Entry(fields, at, machine);
        if (entry is null)
        {
            fields.Break(fields.Mapping, NoteProblems.UnknownEntry());
            entry = new QuickLine(at, "");
        }

        return entry with { Note = fields.Text("note"), Photos = fields.Files("photos") };
    }

    private static LogEntry? Entry(FieldReader fields, DateTimeOffset at, string? machine) => fields switch
    {
        _ when fields.Ref("saw", ReferenceKind.Finding) is { } finding => Seen(fields, at, finding),
        _ when fields.Ref("tested", ReferenceKind.Test) is { } test =>
            new Tested(at, test, fields.NeededRef("outcome", ReferenceKind.Outcome, test) ?? ""),
        _ when fields.Text("read") is { } text => Reading(fields, at, text),
        _ when fields.Ref("reset", ReferenceKind.Reset) is { } reset => new ResetTried(at, reset, fields.NeededWord<Effect>("effect")),
        _ when fields.Ref("held", ReferenceKind.Action) is { } action => Holding(fields, at, action),
        _ when fields.Ref("opened", ReferenceKind.Access, machine) is { } step => new Opened(at, step, Shut: false),
        _ when fields.Ref("shut", ReferenceKind.Access, machine) is { } step => new Opened(at, step, Shut: true),
        _ when fields.Text("taken-off") is { } what => new TakenOff(at, what, fields.Text("where"), BackOn: false),
        _ when fields.Text("back-on") is { } what => new TakenOff(at, what, fields.Text("where"), BackOn: true),
        _ when fields.Text("swapped") is { } part =>
            new Swapped(at, part, fields.Ref("fix", ReferenceKind.Fix), fields.NeededWord<Effect>("effect"), OldBack(fields)),
        _ when fields.Ref("fixed", ReferenceKind.Fix) is { } fix =>
            new Fixed(at, fix, fields.NeededWord<Effect>("effect")) { TestedBefore = fields.Flag("tested-before") },
        _ when fields.Ref("secured", ReferenceKind.Protect) is { } protect => new Secured(at, protect, fields.Flag("done") ?? true),
        _ when fields.Text("skipped") is { } step => new Skipped(at, step, fields.Word<SkipReason>("why") ?? SkipReason.Skip),
        _ when fields.Ref("round", ReferenceKind.Test) is { } round => new RoundDone(at, round),
        _ when fields.Has("counter") => Counter(fields, at),
        _ when fields.Text("line") is { } line => new QuickLine(at, line),
        _ when fields.Text("part") is { } part => Moved(fields, at, part),
        _ when fields.Has("power") => new Powered(at, fields.NeededWord<PowerStage>("power"), fields.Text("current")),
        _ => null,
    };

    private static Saw Seen(FieldReader fields, DateTimeOffset at, string finding) =>
        new(at, finding, fields.NeededRef("value", ReferenceKind.Value, finding) ?? "")
        {
            When = fields.Texts("when"),
            WatchedMinutes = fields.Amount("watched"),
            Sure = fields.Chance("sure")?.Probability,
            ComesAndGoes = fields.Flag("comes-and-goes") ?? false,
            Words = fields.Text("words"),
        };

    private static Read Reading(FieldReader fields, DateTimeOffset at, string text) => new(at, text)
    {
        From = fields.Text("from"),
        To = fields.Text("to"),
        Mode = fields.Text("mode"),
        Value = fields.Text("value"),
        Power = fields.Text("power"),
        Load = fields.Text("load"),
        Instrument = fields.Text("instrument"),
    };

    private static Held Holding(FieldReader fields, DateTimeOffset at, string action)
    {
        var works = fields.Flag("still-works");
        if (works is null)
        {
            fields.Break(fields.Mapping, NoteProblems.MissingField("still-works"));
        }

        return new Held(at, action, works ?? false, fields.Text("after"));
    }

    private static CounterClosed Counter(FieldReader fields, DateTimeOffset at)
    {
        fields.NeededWord<CounterState>("counter");
        return new CounterClosed(at);
    }

    private static bool? OldBack(FieldReader fields) => fields.Word<OldPartBack>("old-back") switch
    {
        OldPartBack.FaultReturned => true,
        OldPartBack.StayedAway => false,
        null => null,
    };

    private static PartMoved Moved(FieldReader fields, DateTimeOffset at, string part) => new(at, part, fields.NeededWord<PartState>("state"))
    {
        Price = fields.Amount("price"),
        Shipping = fields.Amount("shipping"),
        LeadDays = fields.Amount("lead-days"),
        From = fields.Text("from"),
        DateCode = fields.Text("date-code"),
        FromDrawer = fields.Flag("from-drawer") ?? false,
    };
}

/// <summary>What happened when the old part was put back.</summary>
internal enum OldPartBack
{
    FaultReturned,
    StayedAway,
}

/// <summary>What is recorded of the counter.</summary>
internal enum CounterState
{
    Closed,
}
