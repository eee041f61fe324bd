using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Notes.Parsing;

internal static class ReadTest
{
    public static Test From(string id, string name, FieldReader fields)
    {
        var measures = fields.Group("measures");
        var part = measures?.Ref("part", ReferenceKind.PartClass);
        var test = new Test(id, name)
        {
            Way = fields.Has("way") ? fields.NeededWord<TestWay>("way") : TestWay.Ask,
            Reveals = fields.Ref("reveals", ReferenceKind.Finding),
            MeasuresRole = measures?.Ref("role", ReferenceKind.Role),
            MeasuresPart = part,
            Outcomes = fields.Each("outcomes", outcome => ReadOutcome(outcome, part), vital: true),
            Effort = ReadEffort.From(fields),
            InPlace = fields.Flag("in-place") ?? true,
            Steps = fields.Texts("steps"),
            Classes = fields.Refs("classes", ReferenceKind.DeviceClass),
        };
        measures?.Done();
        CheckPurpose(test, fields);
        return test;
    }

    private static void CheckPurpose(Test test, FieldReader fields)
    {
        var measures = test.MeasuresRole is not null || test.MeasuresPart is not null;
        if (test.Reveals is null && !measures)
        {
            fields.Break(fields.Mapping, NoteProblems.TestOfNothing());
        }
        else if (measures && test.Outcomes.IsEmpty)
        {
            fields.Break(fields.Mapping, NoteProblems.MeasuresWithoutOutcomes());
        }
    }

    private static TestOutcome ReadOutcome(FieldReader outcome, string? part)
    {
        var id = outcome.NeededText("outcome") ?? "";
        var given = outcome.Chances("given");
        foreach (var (mode, _) in given.Where(g => part is not null && g.Name.Text is not ("good" or "otherwise")))
        {
            outcome.Refer(ReferenceKind.Mode, mode, part);
        }

        return new TestOutcome(id, outcome.Text("name") ?? id, given.ToImmutableDictionary(g => g.Name.Text, g => g.Chance));
    }
}
