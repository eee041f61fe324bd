using Triage.Notes.Kinds;

namespace Triage.Notes.Parsing;

internal static class ReadFault
{
    public static Fault From(string id, string name, FieldReader fields)
    {
        var part = fields.Ref("part", ReferenceKind.PartClass);
        var device = fields.Ref("device", ReferenceKind.Device);
        var deviceClass = fields.Ref("class", ReferenceKind.DeviceClass);
        var fault = new Fault(id, name)
        {
            Part = part,
            Mode = part is null ? fields.Text("mode") : fields.Ref("mode", ReferenceKind.Mode, part),
            Role = fields.Ref("role", ReferenceKind.Role, device ?? deviceClass),
            Class = deviceClass,
            Device = device,
            NothingWrong = fields.Flag("nothing-wrong") ?? false,
            Share = fields.Chance("share"),
            Shows = fields.Each("shows", ReadShows),
            LeadsTo = fields.Each("leads-to", ReadLeadsTo),
            Mends = fields.Each("mends", mend => ReadMend(mend, device ?? deviceClass)),
            Cautions = ReadEffort.Cautions(fields),
            Build = ReadBuild.Condition(fields),
            Given = fields.Each("given", ReadGiven, vital: true),
        };
        if (fault.Mode is not null && part is null)
        {
            fields.Warn(fields.Node("mode")!, NoteProblems.ModeWithoutPart());
        }

        return fault;
    }

    private static Shows ReadShows(FieldReader shows)
    {
        var finding = shows.NeededRef("finding", ReferenceKind.Finding) ?? "";
        return new Shows(finding, shows.Ref("value", ReferenceKind.Value, finding), shows.NeededChance("chance"))
        {
            When = shows.Texts("when"),
            EveryMinutes = shows.AmountAboveNothing("every"),
        };
    }

    private static LeadsTo ReadLeadsTo(FieldReader leads) =>
        new(leads.NeededRef("fault", ReferenceKind.Fault) ?? "", leads.NeededChance("chance"));

    private static Mend ReadMend(FieldReader mend, string? accessOf) =>
        new(mend.NeededRef("fix", ReferenceKind.Fix) ?? "", mend.Text("name"), mend.NeededChance("works"))
        {
            Effort = ReadEffort.From(mend, accessOf),
            Swap = mend.Flag("swap") ?? false,
            Needs = mend.Ref("needs", ReferenceKind.PartClass),
            Steps = mend.Texts("steps"),
            Proof = ReadProof.Each(mend, accessOf),
            TakesOut = mend.Flag("takes-out") ?? false,
            Build = ReadBuild.Condition(mend),
        };

    private static GivenRow ReadGiven(FieldReader row) =>
        new(row.Refs("present", ReferenceKind.Fault), row.NeededChance("p").Probability);
}
