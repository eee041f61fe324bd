using Triage.Notes.Kinds;

namespace Triage.Notes.Writing;

internal static class WriteFault
{
    public static FieldWriter Fault(FieldWriter fields, Fault note) => fields
        .Text("part", note.Part)
        .Text("mode", note.Mode)
        .Text("role", note.Role)
        .Text("class", note.Class)
        .Text("device", note.Device)
        .Mark("nothing-wrong", note.NothingWrong)
        .Chance("share", note.Share)
        .Each("shows", note.Shows, Shows)
        .Each("leads-to", note.LeadsTo, leads => new FieldWriter().Text("fault", leads.Fault).Chance("chance", leads.Chance).OnOneLine)
        .Each("mends", note.Mends, Mend)
        .Cautions(note.Cautions)
        .Build(note.Build)
        .Each("given", note.Given, row => new FieldWriter()
            .Value("present", YamlValue.Of(row.Present)).Number("p", row.Probability).OnOneLine);

    private static YamlFields Shows(Shows shows) => new FieldWriter()
        .Text("finding", shows.Finding)
        .Text("value", shows.Value)
        .Chance("chance", shows.Chance)
        .Texts("when", shows.When)
        .Number("every", shows.EveryMinutes)
        .OnOneLine;

    private static YamlFields Mend(Mend mend)
    {
        var fields = new FieldWriter()
            .Text("fix", mend.Id)
            .Text("name", mend.Name)
            .Chance("works", mend.Works)
            .Mark("swap", mend.Swap)
            .Text("needs", mend.Needs)
            .Effort(mend.Effort)
            .Texts("steps", mend.Steps)
            .Proof(mend.Proof)
            .Mark("takes-out", mend.TakesOut)
            .Build(mend.Build);
        return mend.Name is null ? fields.OnOneLine : fields.OnLines;
    }
}
