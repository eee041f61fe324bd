using System.Collections.Immutable;
using Triage.Tools.Exam.Cases;
using Triage.Tools.Exam.Playing;
using Triage.Tools.Exam.Scoring;
using Triage.Workshop.Answers;
using Xunit;
using static Triage.Workshop.Tests.Exam.MadeUpCourse;

namespace Triage.Workshop.Tests.Exam;

public sealed class MarkingTest
{
    [Fact]
    public void A_step_is_what_the_key_says_of_it() =>
        Assert.Equal([Verdict.Fine, Verdict.Silly, Verdict.Never], Verdicts(Look("a"), Look("b"), Look("c")));

    [Fact]
    public void A_step_that_nobody_judged_is_silly_and_listed()
    {
        var mark = Assert.Single(Marks(Look("d")));
        Assert.Equal((Verdict.Silly, false), (mark.Verdict, mark.Judged));
    }

    [Fact]
    public void The_same_step_again_is_silly_however_it_is_judged() =>
        Assert.Equal([null, Marking.Repeated], Marks(Look("a"), Look("a")).Select(m => m.Why));

    [Fact]
    public void The_same_step_again_is_fine_once_a_mend_changed_the_machine() =>
        Assert.Equal([Verdict.Fine, Verdict.Fine, Verdict.Fine], Verdicts(Look("a"), Look("f") with { Part = TurnPart.Step, ChangedTheMachine = true }, Look("a")));

    [Fact]
    public void What_the_complaint_said_is_not_asked_again() =>
        Assert.Equal([Marking.AlreadyAnswered], Marks(Look("a", tells: "hum")).Select(m => m.Why));

    [Fact]
    public void What_an_earlier_step_told_is_not_looked_for_by_another() =>
        Assert.Equal([null, Marking.AlreadyAnswered], Marks(Look("a", tells: "display"), Look("f", tells: "display")).Select(m => m.Why));

    [Fact]
    public void What_could_not_be_told_may_be_looked_for_in_another_way() =>
        Assert.Equal([null, null], Marks(Look("a", tells: "display", outcome: null), Look("f", tells: "display")).Select(m => m.Why));

    [Fact]
    public void What_this_machine_has_not_is_silly() =>
        Assert.Equal([Marking.DoesNotFit], Marks(Of(TurnPart.Step, "a", new Row("a", "a", null, "no") { Misfit = true })).Select(m => m.Why));

    [Fact]
    public void What_is_unsafe_stays_unsafe_when_it_is_repeated() =>
        Assert.Equal([Verdict.Never, Verdict.Never], Verdicts(Look("c"), Look("c")));

    [Fact]
    public void Each_line_of_a_round_is_judged() =>
        Assert.Equal([Verdict.Fine, Verdict.Silly, Verdict.Silly], Verdicts(Of(TurnPart.Step, "round", Row("a"), Row("b"), Row("d"))));

    [Fact]
    public void Securing_is_silly_only_where_somebody_says_that_nothing_can_be_lost() =>
        Assert.Equal([Verdict.Fine, Verdict.Silly], Verdicts(Look("d") with { Part = TurnPart.Protect }, Look("b") with { Part = TurnPart.Protect }));

    [Fact]
    public void Full_power_is_unsafe_until_the_cold_check_is_done() =>
        Assert.Equal([Verdict.Never, Verdict.Fine, Verdict.Fine], Verdicts(Look("power-on"), Look("a"), Look("power-on-again")));

    private static IEnumerable<Verdict> Verdicts(params ImmutableArray<Turn> turns) => Marks(turns).Select(m => m.Verdict);

    private static ImmutableArray<Mark> Marks(params ImmutableArray<Turn> turns) => new Marking(Case, new() { Told = ["hum"], Turns = turns, Ending = Ending.None }).Marks();
}
