using System.Collections.Immutable;
using Triage.Tools.Exam.Cases;
using Triage.Tools.Exam.Playing;
using Triage.Workshop.Answers;

namespace Triage.Workshop.Tests.Exam;

/// <summary>Turns written by hand, on a machine that a master knows after three steps and 10 minutes.</summary>
internal static class MadeUpCourse
{
    private static readonly Judgement AfterTheColdCheck = new(Verdict.Fine) { After = ["a"], Else = Verdict.Never };

    public static readonly ExamCase Case = new("box", "chime box")
    {
        Truth = [["cell-flat"], ["joint-cracked", "joint-loose"]],
        RightEndings = [Ending.Mended],
        MasterSteps = 3,
        MasterMinutes = 10,
        Judged = new Dictionary<string, Judgement>
        {
            ["a"] = new(Verdict.Fine),
            ["b"] = new(Verdict.Silly),
            ["c"] = new(Verdict.Never),
            ["f"] = new(Verdict.Fine, Minutes: 7),
            ["power-on"] = AfterTheColdCheck,
            ["power-on-again"] = AfterTheColdCheck,
        }.ToImmutableDictionary(),
    };

    public static Turn Look(string id, string? tells = null, string? outcome = "no") => Of(TurnPart.Step, id, new Row(id, id, tells, outcome));

    public static Turn Of(TurnPart part, string id, params ImmutableArray<Row> rows) => new(part, id, StepKind.Look, id) { Minutes = 2, Rows = rows };

    public static Row Row(string id) => new(id, id, id, "no");
}
