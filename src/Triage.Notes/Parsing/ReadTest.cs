using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Notes.Parsing;

internal static class ReadTest
{
    public static Test From(string id, string name, FieldReader fields)
    {
        var revealed = Revealed(fields);
        var measures = fields.Group("measures");
        var part = measures?.Ref("part", ReferenceKind.PartClass);
        var decides = fields.Ref("decides", ReferenceKind.Fault);
        var test = new Test(id, name)
        {
            Way = fields.Has("way") ? fields.NeededWord<TestWay>("way") : TestWay.Ask,
            Reveals = revealed is [var one] ? one : null,
            Round = revealed is [_, _, ..] ? revealed : [],
            MeasuresRole = measures?.Ref("role", ReferenceKind.Role),
            MeasuresPart = part,
            Decides = decides,
            Outcomes = fields.Each("outcomes", outcome => ReadOutcome(outcome, decides ?? part), vital: true),
            Effort = ReadEffort.From(fields),
            InPlace = fields.Flag("in-place") ?? true,
            Steps = fields.Texts("steps"),
            Classes = fields.Refs("classes", ReferenceKind.DeviceClass),
            Build = ReadBuild.Condition(fields),
        };
        measures?.Done();
        CheckPurpose(test, fields);
        return test;
    }

    /// <summary>What it reveals, each once.</summary>
    private static ImmutableArray<string> Revealed(FieldReader fields)
    {
        var named = ImmutableArray.CreateBuilder<string>();
        foreach (var finding in fields.Scalars("reveals"))
        {
            fields.Refer(ReferenceKind.Finding, finding, within: null);
            if (named.Contains(finding.Text))
            {
                fields.Warn(finding, NoteProblems.RevealsTwice(finding.Text));
                continue;
            }

            named.Add(finding.Text);
        }

        return named.ToImmutable();
    }

    private static void CheckPurpose(Test test, FieldReader fields)
    {
        var measures = test.MeasuresRole is not null || test.MeasuresPart is not null;
        ProblemText? wrong = test switch
        {
            { Decides: not null, Revealed.IsEmpty: false } => NoteProblems.TestOfTwoThings(),
            { Decides: not null, Outcomes.IsEmpty: true } => NoteProblems.DecidesWithoutOutcomes(),
            { Decides: null, Revealed.IsEmpty: true } when !measures => fields.Has("reveals") ? NoteProblems.RoundOfNothing() : NoteProblems.TestOfNothing(),
            { Outcomes.IsEmpty: true } when measures => NoteProblems.MeasuresWithoutOutcomes(),
            _ => null,
        };
        if (wrong is not null)
        {
            fields.Break(fields.Node("reveals") ?? fields.Mapping, wrong);
        }
    }

    /// <param name="modesOf">Part class, or fault that is decided, whose failure modes are named.</param>
    private static TestOutcome ReadOutcome(FieldReader outcome, string? modesOf)
    {
        var id = outcome.NeededText("outcome") ?? "";
        var given = outcome.Chances("given");
        foreach (var (mode, _) in given.Where(g => modesOf is not null && !TestOutcome.IsGeneral(g.Name.Text)))
        {
            outcome.Refer(ReferenceKind.Mode, mode, modesOf);
        }

        return new TestOutcome(id, outcome.Text("name") ?? id, given.ToImmutableDictionary(g => g.Name.Text, g => g.Chance));
    }
}
