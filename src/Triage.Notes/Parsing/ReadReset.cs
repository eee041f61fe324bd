using Triage.Notes.Kinds;

namespace Triage.Notes.Parsing;

internal static class ReadReset
{
    public static Reset From(string id, string name, FieldReader fields)
    {
        var device = fields.Ref("device", ReferenceKind.Device);
        var deviceClass = fields.Ref("class", ReferenceKind.DeviceClass);
        return new Reset(id, name)
        {
            Class = deviceClass,
            Device = device,
            FormOf = fields.Ref("form-of", ReferenceKind.Reset),
            Steps = fields.Texts("steps"),
            Before = fields.Texts("before"),
            Clears = fields.Each("clears", ReadClears),
            Erases = fields.Text("erases"),
            Effort = ReadEffort.From(fields, device ?? deviceClass),
            Build = ReadBuild.Condition(fields),
        };
    }

    private static Clears ReadClears(FieldReader clears) => new(
        clears.NeededRef("fault", ReferenceKind.Fault) ?? "",
        clears.NeededChance("works"),
        clears.NeededChance("holds"));
}
