using Triage.Notes.Kinds;

namespace Triage.Notes.Parsing;

internal static class ReadJob
{
    public static Job From(string id, string name, FieldReader fields)
    {
        var device = fields.Ref("device", ReferenceKind.Device);
        var deviceClass = fields.Ref("class", ReferenceKind.DeviceClass);
        var job = new Job(id, name)
        {
            Device = device,
            Class = deviceClass,
            Unit = fields.Text("unit"),
            Opened = fields.Date("opened"),
            Closed = fields.Date("closed"),
            Technician = fields.Text("technician"),
            Owner = fields.Text("owner"),
            Serial = fields.Text("serial"),
            Complaint = fields.Text("complaint") ?? "",
            History = fields.Texts("history"),
            Consent = ReadConsent(fields.Group("consent", vital: true)),
            Worth = fields.Amount("worth"),
            Log = fields.Each("log", entry => ReadLogEntry.From(entry, device ?? deviceClass)),
            Causes = fields.Each("causes", ReadCause, vital: true),
            Damage = fields.Refs("damage", ReferenceKind.Fault),
            Outcome = fields.Has("outcome") ? fields.NeededWord<JobOutcome>("outcome") : null,
            WaitsFor = ReadWaiting(fields.Group("waits-for")),
            Minutes = fields.Amount("minutes"),
            FollowUps = fields.Each("follow-ups", ReadFollowUp),
            Build = ReadBuild.Told(fields),
            NoOwner = fields.Flag("no-owner") ?? false,
            Generated = fields.Flag("generated") ?? false,
        };
        if (device is null && deviceClass is null && job.Unit is null)
        {
            fields.Warn(fields.Mapping, NoteProblems.JobWithoutUnit());
        }

        return job;
    }

    private static Consent ReadConsent(FieldReader? consent)
    {
        if (consent is null)
        {
            return new Consent();
        }

        var given = new Consent(consent.Amount("spending-limit"), consent.Flag("may-erase"), consent.Flag("originals-back"));
        consent.Done();
        return given;
    }

    private static FoundCause ReadCause(FieldReader cause)
    {
        var chance = cause.Has("chance") ? cause.NeededChance("chance").Probability : 1;
        return new FoundCause(
            cause.NeededRef("fault", ReferenceKind.Fault) ?? "", cause.NeededWord<Grade>("grade"), chance, cause.Flag("new") ?? false);
    }

    private static Waiting? ReadWaiting(FieldReader? waiting)
    {
        if (waiting is null)
        {
            return null;
        }

        var waits = new Waiting(waiting.NeededText("for") ?? "", waiting.Date("until"));
        waiting.Done();
        return waiting.Broken ? null : waits;
    }

    private static FollowUp ReadFollowUp(FieldReader heard)
    {
        var cameBack = heard.Flag("came-back");
        if (cameBack is null)
        {
            heard.Break(heard.Mapping, NoteProblems.MissingField("came-back"));
        }

        return new FollowUp(heard.NeededDate("on"), cameBack ?? false, heard.Text("note"));
    }
}
