using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Notes.Writing;

/// <summary>Writes findings, tests and resets.</summary>
internal static class WriteCheck
{
    public static FieldWriter Finding(FieldWriter fields, Finding note) => Values(fields.Text("ask", note.Ask), note.Values)
        .Mark("nominal", note.Nominal)
        .Mark("limits-power", note.LimitsPower)
        .Texts("classes", note.Classes)
        .Build(note.Build);

    public static FieldWriter Test(FieldWriter fields, Test note) => fields
        .Word<TestWay>("way", note.Way)
        .Text("reveals", note.Reveals)
        .Texts("reveals", note.Round)
        .Group("measures", new FieldWriter().Text("role", note.MeasuresRole).Text("part", note.MeasuresPart))
        .Text("decides", note.Decides)
        .Each("outcomes", note.Outcomes, Outcome)
        .Effort(note.Effort)
        .Flag("in-place", note.InPlace ? null : false)
        .Texts("steps", note.Steps)
        .Texts("classes", note.Classes)
        .Build(note.Build);

    public static FieldWriter Reset(FieldWriter fields, Reset note) => fields
        .Text("class", note.Class)
        .Text("device", note.Device)
        .Text("form-of", note.FormOf)
        .Texts("steps", note.Steps)
        .Texts("before", note.Before)
        .Each("clears", note.Clears, clears => new FieldWriter()
            .Text("fault", clears.Fault).Chance("works", clears.Works).Chance("holds", clears.Holds).OnOneLine)
        .Text("erases", note.Erases)
        .Effort(note.Effort)
        .Build(note.Build);

    private static FieldWriter Values(FieldWriter fields, ImmutableArray<FindingValue> values) =>
        values is [{ Id: "no", Anyway: null } no, { Id: "yes" } yes]
            ? fields.Text("seen", Sentence(yes)).Text("not-seen", Sentence(no)).Texts("says", yes.Says).Texts("says-not", no.Says).Chance("anyway", yes.Anyway)
            : fields.Each("values", values, value => new FieldWriter()
                .Text("value", value.Id).Text("name", value.Name).Texts("says", value.Says).Chance("anyway", value.Anyway).OnOneLine);

    private static string? Sentence(FindingValue value) => value.Name == value.Id ? null : value.Name;

    private static YamlFields Outcome(TestOutcome outcome)
    {
        var given = outcome.Given.OrderBy(g => g.Key, StringComparer.Ordinal)
            .Aggregate(new FieldWriter(), (table, g) => table.Chance(g.Key, g.Value));
        return new FieldWriter().Text("outcome", outcome.Id).Text("name", outcome.Name).Group("given", given).OnLines;
    }
}
