using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Notes.Parsing;

internal static class ReadFinding
{
    public static Finding From(string id, string name, FieldReader fields) => new(id, name)
    {
        Ask = fields.Text("ask"),
        Nominal = fields.Flag("nominal") ?? false,
        Values = fields.Has("values") ? fields.Each("values", ReadValue, vital: true) : NoAndYes(fields),
        Classes = fields.Refs("classes", ReferenceKind.DeviceClass),
        LimitsPower = fields.Flag("limits-power") ?? false,
        Build = ReadBuild.Condition(fields),
    };

    private static FindingValue ReadValue(FieldReader value)
    {
        var id = value.NeededText("value") ?? "";
        return new FindingValue(id, value.Text("name") ?? id, value.Texts("says"), value.Chance("anyway"));
    }

    private static ImmutableArray<FindingValue> NoAndYes(FieldReader fields) =>
    [
        new FindingValue("no", fields.Text("not-seen") ?? "no", fields.Texts("says-not"), null),
        new FindingValue("yes", fields.Text("seen") ?? "yes", fields.Texts("says"), fields.Chance("anyway")),
    ];
}
