using Triage.Notes.Kinds;

namespace Triage.Notes.Parsing;

internal static class ReadPartClass
{
    public static PartClass From(string id, string name, FieldReader fields) => new(id, name)
    {
        Modes = fields.Each("modes", ReadMode),
        Readings = fields.Each("readings", reading => ReadPartReading.From(reading, id)),
        Wears = fields.Texts("wears"),
        LookFor = fields.Texts("look-for"),
        TestInPlace = fields.Texts("test-in-place"),
        TestOut = fields.Texts("test-out"),
        MustMatch = fields.Texts("must-match"),
        MayBeBetter = fields.Texts("may-be-better"),
        MustNotChange = fields.Texts("must-not-change"),
        NewCanBeBad = fields.Texts("new-can-be-bad"),
        Cautions = ReadEffort.Cautions(fields),
    };

    private static FailureMode ReadMode(FieldReader mode)
    {
        var id = mode.NeededText("mode") ?? "";
        return new FailureMode(id, mode.Text("name") ?? id, mode.Chance("share"));
    }
}
