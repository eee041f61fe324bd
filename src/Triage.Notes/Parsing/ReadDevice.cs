using Triage.Notes.Kinds;

namespace Triage.Notes.Parsing;

internal static class ReadDevice
{
    public static Device From(string id, string name, FieldReader fields)
    {
        var classId = fields.NeededRef("class", ReferenceKind.DeviceClass) ?? "";
        return new Device(id, name)
        {
            Maker = fields.Text("maker"),
            Model = fields.Text("model"),
            Class = classId,
            Years = fields.Text("years"),
            Boards = fields.Texts("boards"),
            Parts = fields.Each("parts", ReadPart),
            Access = ReadEffort.Steps(fields, id),
            Drawings = fields.Each("drawings", ReadDrawing),
            Without = fields.Refs("without", ReferenceKind.Role, classId),
            Build = ReadBuild.Told(fields),
        };
    }

    private static DevicePart ReadPart(FieldReader part) => new(
        part.Text("designator"),
        part.NeededRef("part", ReferenceKind.PartClass) ?? "",
        part.Text("role"),
        part.Text("where"),
        part.Text("rating"));

    private static Drawing ReadDrawing(FieldReader drawing) =>
        new(drawing.NeededFile("file") ?? "", drawing.Text("board"), drawing.Text("shows"));
}
