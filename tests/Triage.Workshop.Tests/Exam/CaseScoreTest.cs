using System.Collections.Immutable;
using Triage.Tools.Exam.Cases;
using Triage.Tools.Exam.Playing;
using Triage.Tools.Exam.Scoring;
using Xunit;
using static Triage.Workshop.Tests.Exam.MadeUpCourse;

namespace Triage.Workshop.Tests.Exam;

public sealed class CaseScoreTest
{
    /// <summary>Two questions at the counter, a look, a mend behind a lid, a proof.</summary>
    private static readonly Course Mended = new()
    {
        Turns =
        [
            Look("b") with { Part = TurnPart.Counter },
            Look("d") with { Part = TurnPart.Counter },
            Look("a"),
            Look("f") with { OpeningMinutes = 5 },
            Look("mend") with { ChangedTheMachine = true },
            Look("mend") with { Part = TurnPart.Proof },
        ],
        Standings = [Standing("x", "cell-flat"), Standing("cell-flat", "joint-loose"), Standing("cell-flat", "x")],
        Ending = Ending.Mended,
        MendedBy = 4,
    };

    [Fact]
    public void The_first_step_is_the_first_after_the_counter() => Assert.True(Score(Mended).FirstAcceptable);

    [Fact]
    public void Questions_at_the_counter_count_for_silly() => Assert.Equal(3, Score(Mended).Silly);

    [Fact]
    public void The_first_step_is_acceptable_only_with_every_line_of_its_round()
    {
        Assert.False(Score(new() { Turns = [Of(TurnPart.Step, "round", Row("a"), Row("b"))] }).FirstAcceptable);
        Assert.False(Score(new()).FirstAcceptable);
    }

    [Fact]
    public void Minutes_are_those_before_the_mend_with_the_opening_once_and_the_key_s_own_where_it_has_them()
    {
        Assert.Equal(2 + 5 + 7, Score(Mended).Minutes);
        Assert.Equal(1.4, Score(Mended).MinutesRatio, 12);
    }

    [Theory]
    [InlineData(nameof(Ending.None))]
    [InlineData(nameof(Ending.NotWorthIt))]
    public void A_wrong_ending_takes_for_ever(string ending)
    {
        var score = Score(Mended with { Ending = Enum.Parse<Ending>(ending), MendedBy = null });
        Assert.False(score.RightlyEnded);
        Assert.Equal(double.PositiveInfinity, score.Minutes);
    }

    [Fact]
    public void Mended_with_something_still_wrong_is_no_right_ending() => Assert.False(Score(Mended with { MendedBy = null }).RightlyEnded);

    [Fact]
    public void A_hand_over_is_right_where_the_case_says_so_and_its_minutes_are_those_before_it()
    {
        var course = new Course { Turns = [Look("a"), Look("hand-over") with { Part = TurnPart.Ending }], Ending = Ending.HandedOver };
        var score = new CaseScore(Case with { RightEndings = [Ending.HandedOver] }, "empty", course);
        Assert.True(score.RightlyEnded);
        Assert.Equal((2, 0), (score.Minutes, score.Silly));
    }

    [Fact]
    public void The_rank_is_that_of_the_worst_unmended_part_after_the_master_s_steps() =>
        Assert.Equal(4, Score(Unmended(Standing("cell-flat"), Standing(), Standing(), Standing("x", "cell-flat", "y", "joint-loose"), Standing("cell-flat"))).Rank);

    [Fact]
    public void What_is_mended_by_then_is_not_ranked() =>
        Assert.Equal(2, Score(Unmended(new Standing(["x", "joint-cracked"], [["joint-cracked", "joint-loose"]]))).Rank);

    [Fact]
    public void A_truth_that_no_note_lists_fails()
    {
        Assert.Null(Score(Unmended(Standing("cell-flat"))).Rank);
        Assert.Null(new CaseScore(Case with { Missing = "the bent bracket" }, "empty", Unmended(Standing("cell-flat", "joint-loose"))).Rank);
    }

    [Fact]
    public void Totals_are_shares_of_all_lines_and_the_median_is_nobody_s_when_half_came_to_no_cause()
    {
        var totals = Totals.Of([Score(Mended), Score(new() { Turns = [Look("c")] })]);
        Assert.Equal((2, 0.5, 1, 0.5), (totals.Cases, totals.FirstAcceptable, totals.Unsafe, totals.Ended));
        Assert.Equal(3.0 / 7, totals.Silly, 12);
        Assert.Null(totals.MinutesRatio);
        Assert.Equal(1.4, Totals.Of([Score(Mended)]).MinutesRatio!.Value, 12);
        Assert.Equal(2.0 / 7, Totals.Unjudged([Score(Mended), Score(new() { Turns = [Look("c")] })]), 12);
    }

    private static CaseScore Score(Course course) => new(Case, "empty", course);

    private static Course Unmended(params ImmutableArray<Standing> standings) => new() { Turns = [Look("a")], Standings = standings };

    private static Standing Standing(params ImmutableArray<string> causes) => new(causes, Case.Truth);
}
