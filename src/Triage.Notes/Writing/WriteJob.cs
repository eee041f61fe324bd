using Triage.Notes.Kinds;

namespace Triage.Notes.Writing;

internal static class WriteJob
{
    public static FieldWriter Job(FieldWriter fields, Job note) => fields
        .Text("device", note.Device)
        .Text("class", note.Class)
        .Text("unit", note.Unit)
        .Date("opened", note.Opened)
        .Text("technician", note.Technician)
        .Text("owner", note.Owner)
        .Text("serial", note.Serial)
        .Text("complaint", note.Complaint)
        .Texts("history", note.History)
        .Group("consent", new FieldWriter()
            .Number("spending-limit", note.Consent.SpendingLimit)
            .Flag("may-erase", note.Consent.MayErase)
            .Flag("originals-back", note.Consent.OriginalsBack))
        .Number("worth", note.Worth)
        .Each("log", note.Log, LogEntryYaml.Of)
        .Value("waits-for", note.WaitsFor is { } waiting ? Waiting(waiting) : null)
        .Each("causes", note.Causes, Cause)
        .Texts("damage", note.Damage)
        .Word("outcome", note.Outcome)
        .Date("closed", note.Closed)
        .Number("minutes", note.Minutes)
        .Each("follow-ups", note.FollowUps, FollowUp)
        .Mark("generated", note.Generated);

    /// <summary>One item of <c>causes</c>.</summary>
    public static YamlFields Cause(FoundCause cause) => new FieldWriter()
        .Text("fault", cause.Fault)
        .Word<Grade>("grade", cause.Grade)
        .Number("chance", cause.Chance == 1 ? null : cause.Chance)
        .Mark("new", cause.WasNew)
        .OnOneLine;

    /// <summary>The value of <c>waits-for</c>.</summary>
    public static YamlFields Waiting(Waiting waiting) => new FieldWriter().Text("for", waiting.For).Date("until", waiting.Until).OnOneLine;

    /// <summary>One item of <c>follow-ups</c>.</summary>
    public static YamlFields FollowUp(FollowUp heard) =>
        new FieldWriter().Date("on", heard.On).Flag("came-back", heard.CameBack).Text("note", heard.Note).OnOneLine;
}
