using Triage.Notes.Kinds;

namespace Triage.Notes.Writing;

internal static class WriteJob
{
    public static FieldWriter Job(FieldWriter fields, Job note) => fields
        .Text("device", note.Device)
        .Text("class", note.Class)
        .Text("unit", note.Unit)
        .Build(note.Build)
        .Date("opened", note.Opened)
        .Text("technician", note.Technician)
        .Text("owner", note.Owner)
        .Text("serial", note.Serial)
        .Mark("no-owner", note.NoOwner)
        .Text("complaint", note.Complaint)
        .Texts("history", note.History)
        .Group("consent", JobYaml.Fields(note.Consent))
        .Number("worth", note.Worth)
        .Each("log", note.Log, LogEntryYaml.Of)
        .Value("waits-for", note.WaitsFor is { } waiting ? JobYaml.Of(waiting) : null)
        .Each("causes", note.Causes, JobYaml.Of)
        .Texts("damage", note.Damage)
        .Word("outcome", note.Outcome)
        .Date("closed", note.Closed)
        .Number("minutes", note.Minutes)
        .Each("follow-ups", note.FollowUps, JobYaml.Of)
        .Mark("generated", note.Generated);
}
