using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Notes.Parsing;

internal static class ReadProtect
{
    public static ImmutableArray<Protect> Each(FieldReader fields, string classId)
    {
        var named = new Named("protect");
        return fields.Each("protect", protect => One(protect, named, classId));
    }

    private static Protect One(FieldReader protect, Named named, string classId)
    {
        var id = named.Once(protect) ?? "";
        return new Protect(id, protect.Text("name") ?? id)
        {
            Steps = protect.Texts("steps"),
            Effort = ReadEffort.From(protect, classId),
            Loses = protect.Text("loses"),
            When = protect.Each("when", ReadOccasion, plain: finding => Plain(finding, protect)),
            Build = ReadBuild.Condition(protect),
        };
    }

    private static Occasion Plain(YamlScalar finding, FieldReader protect)
    {
        protect.Refer(ReferenceKind.Finding, finding, within: null);
        return new Noticed(finding.Text, null);
    }

    private static Occasion ReadOccasion(FieldReader when)
    {
        if (when.Ref("fault", ReferenceKind.Fault) is { } fault)
        {
            return new Feared(fault, when.NeededChance("over").Probability);
        }

        var finding = when.NeededRef("finding", ReferenceKind.Finding) ?? "";
        return new Noticed(finding, when.Ref("value", ReferenceKind.Value, finding));
    }
}
