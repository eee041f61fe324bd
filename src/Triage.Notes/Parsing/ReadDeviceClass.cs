using Triage.Notes.Kinds;

namespace Triage.Notes.Parsing;

internal static class ReadDeviceClass
{
    public static DeviceClass From(string id, string name, FieldReader fields) => new(id, name)
    {
        Exact = fields.Flag("exact") ?? false,
        Builds = ReadBuild.Traits(fields),
        Roles = fields.Each("roles", role => ReadRole(role, id)),
        Cautions = ReadEffort.Cautions(fields, id),
        StopAtOnce = fields.Each("stop-at-once", ReadStop, plain: say => new StopNow(say.Text)),
        Counter = fields.Refs("counter", ReferenceKind.Finding),
        Pointless = fields.Each("pointless", ReadPointless),
        Protect = ReadProtect.Each(fields, id),
        UsualOrder = fields.Refs("usual-order", ReferenceKind.TestOrReset),
        BeforePower = fields.Refs("before-power", ReferenceKind.Test),
        LimitedPower = fields.Refs("limited-power", ReferenceKind.Test),
        Access = ReadEffort.Steps(fields, id),
        WhileOpen = fields.Texts("while-open"),
        Proof = ReadProof.Each(fields, id),
        Exchange = ReadExchange(fields.Group("exchange"), id),
        UsualWorth = fields.Amount("usual-worth"),
        NotCovered = fields.Texts("not-covered"),
    };

    private static Pointless ReadPointless(FieldReader pointless)
    {
        var finding = pointless.NeededRef("finding", ReferenceKind.Finding) ?? "";
        return new(finding, pointless.Refs("value", ReferenceKind.Value, finding), pointless.Refs("then", ReferenceKind.Step));
    }

    private static StopNow ReadStop(FieldReader stop) => new(stop.NeededText("say") ?? "") { Build = ReadBuild.Condition(stop) };

    private static Exchange? ReadExchange(FieldReader? exchange, string classId)
    {
        if (exchange is null)
        {
            return null;
        }

        var whole = new Exchange { Effort = ReadEffort.From(exchange, classId), Build = ReadBuild.Condition(exchange) };
        exchange.Done();
        return exchange.Broken ? null : whole;
    }

    private static Role ReadRole(FieldReader role, string classId)
    {
        var id = role.NeededText("role") ?? "";
        return new Role(
            id,
            role.Text("name") ?? id,
            role.Ref("part", ReferenceKind.PartClass),
            role.Ref("access", ReferenceKind.Access, classId)) { Build = ReadBuild.Condition(role) };
    }
}
