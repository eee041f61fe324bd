using Triage.Notes.Kinds;

namespace Triage.Notes.Parsing;

internal static class ReadDeviceClass
{
    public static DeviceClass From(string id, string name, FieldReader fields) => new(id, name)
    {
        Exact = fields.Flag("exact") ?? false,
        Roles = fields.Each("roles", role => ReadRole(role, id)),
        Cautions = ReadEffort.Cautions(fields),
        StopAtOnce = fields.Texts("stop-at-once"),
        UsualOrder = fields.Refs("usual-order", ReferenceKind.TestOrReset),
        BeforePower = fields.Refs("before-power", ReferenceKind.Test),
        Access = ReadEffort.Steps(fields, id),
        WhileOpen = fields.Texts("while-open"),
    };

    private static Role ReadRole(FieldReader role, string classId)
    {
        var id = role.NeededText("role") ?? "";
        return new Role(
            id,
            role.Text("name") ?? id,
            role.Ref("part", ReferenceKind.PartClass),
            role.Ref("access", ReferenceKind.Access, classId));
    }
}
