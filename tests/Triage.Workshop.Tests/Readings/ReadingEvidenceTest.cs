using Triage.Notes.Kinds;
using Triage.Workshop.Answers;
using Triage.Workshop.Steps;
using Xunit;

namespace Triage.Workshop.Tests.Readings;

/// <summary>A reading recorded on a job moves the causes as the mathematics says it should.</summary>
public sealed class ReadingEvidenceTest(SharedDemo shared)
{
    private readonly DemoBench bench = shared.Bench;

    private const string Keyboard = "Corvane K-61";
    private static readonly string[] BackUp = ["backup-capacitor-shorted", "backup-capacitor-leaking", "backup-capacitor-open", "backup-capacitor-low"];

    /// <summary>
    /// By hand, C14 (0.1 F) one leg lifted, 2 Ω on the ordinary meter: on the logarithmic axis from 0.05 Ω to 20 MΩ (19.807 long) a
    /// shorted one is spread over 0.05 … 20 Ω (5.991), so 0.98 / 5.991 + 0.02 / 19.807 = 0.16458; a good, leaking or low one begins at
    /// 5 Ω, an open one at 100 kΩ: the slip alone, 0.02 / 19.807 = 0.0010097. Their ratio is 162.99.
    /// </summary>
    [Fact]
    public void A_shorted_capacitors_reading_moves_the_posterior_as_Bayes_rule_says()
    {
        var id = TakeIn(bench, "nothing on the display, no sound");
        var before = Answer(bench, id);
        Written(bench.Live.Steps.Reading(id, Ohms("2 R", lifted: true)));
        var after = Answer(bench, id);

        const double ratio = 162.99;
        var shorted = before.Cause(BackUp[0])!.Probability;
        var whole = (shorted * ratio) + (1 - shorted);
        Assert.Equal(shorted * ratio / whole, after.Cause(BackUp[0])!.Probability, 1e-4);
        Assert.All(BackUp.Skip(1), f => Assert.Equal(before.Cause(f)!.Probability / whole, after.Cause(f)!.Probability, 1e-4));
        Assert.Contains(after.Evidence, e => e.Words == "C14: 2 R");
        Assert.DoesNotContain(after.Remarks, r => r.Contains("C14", StringComparison.Ordinal));
    }

    [Fact]
    public void The_same_reading_says_less_in_circuit_than_with_a_leg_lifted()
    {
        var id = TakeIn(bench, "nothing on the display, no sound");
        var none = Shorted(bench, id);
        Written(bench.Live.Steps.Reading(id, Ohms("2 R", lifted: false)));
        var inCircuit = Shorted(bench, id);
        Written(bench.Live.Steps.Reading(id, Ohms("2 R", lifted: true)));
        var lifted = Shorted(bench, id);
        Assert.True(none < inCircuit && inCircuit < lifted, $"{none} < {inCircuit} < {lifted}");
        Written(bench.Live.Steps.Reading(id, Ohms("2 R", lifted: false)));
        Assert.Equal(lifted, Shorted(bench, id), 12);
    }

    [Fact]
    public void A_reading_taken_again_replaces_the_first_and_is_not_counted_twice()
    {
        var id = TakeIn(bench, "nothing on the display, no sound");
        Written(bench.Live.Steps.Reading(id, Ohms("2 R", lifted: true)));
        var once = Shorted(bench, id);
        Written(bench.Live.Steps.Reading(id, Ohms("2 R", lifted: true)));
        Assert.Equal(once, Shorted(bench, id), 12);
    }

    [Fact]
    public void Three_looks_are_one_observation_that_is_stronger_than_one_look()
    {
        var id = TakeIn(bench, "nothing on the display, no sound");
        Written(bench.Live.Steps.Reading(id, Look("12 R", "")));
        var one = Shorted(bench, id);
        Written(bench.Live.Steps.Reading(id, Look("12.1 R", ", after 30 s")));
        Assert.Equal(one, Shorted(bench, id), 3);
        Written(bench.Live.Steps.Reading(id, Look("12 R", ", leads reversed")));
        Assert.True(Shorted(bench, id) > one + 0.03);
        var job = Job(bench, id);
        var verdict = bench.Live.Current.VerdictOn(job, job.Log.OfType<Read>().First())!;
        Assert.StartsWith("12 Ω across C14, power off and drained: flat and low all three times, speaks for shorted (fair)", verdict.Words, StringComparison.Ordinal);
        Assert.Contains("lift one leg and repeat", verdict.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_test_of_the_same_part_told_is_not_counted_again_as_a_reading()
    {
        var id = TakeIn(bench, "nothing on the display, no sound");
        Written(bench.Live.Steps.Tested(id, "ohms-across-backup", "flat-low"));
        var tested = Shorted(bench, id);
        Written(bench.Live.Steps.Reading(id, Ohms("2 R", lifted: false)));
        Assert.Equal(tested, Shorted(bench, id), 12);
        Assert.Contains(Answer(bench, id).Remarks, r => r.Contains("counted once", StringComparison.Ordinal));
    }

    [Fact]
    public void After_the_part_was_exchanged_a_reading_is_of_the_new_one()
    {
        var id = TakeIn(bench, "nothing on the display, no sound");
        Written(bench.Live.Steps.Reading(id, Ohms("2 R", lifted: true)));
        Written(bench.Live.Steps.Fixed(id, "replace-backup-capacitor", Effect.NoChange));
        var exchanged = Shorted(bench, id);
        Written(bench.Live.Steps.Reading(id, Ohms("400 R", lifted: true)));
        Assert.True(Shorted(bench, id) < exchanged / 10);
    }

    [Theory]
    [InlineData("ohms", "2 R", "full", "on a range that feeds the part while the power was on: switch off")]
    [InlineData("ohms", "2 R", "off", "not drained: drain stored charge")]
    [InlineData("dc-volts", "2 R", "full", "where V is expected")]
    [InlineData("torque gauge", "18 R", null, "is not a mode of an instrument known here")]
    [InlineData("henries", "2 mH", null, "does not say what henries mean there")]
    public void A_reading_with_a_problem_is_not_weighed_and_the_answer_says_why_and_what_to_do(string mode, string value, string? power, string why)
    {
        var id = TakeIn(bench, "nothing on the display, no sound");
        var before = Shorted(bench, id);
        Written(bench.Live.Steps.Reading(id, new(default, $"C14: {value}") { From = "C14 +", To = "C14 -", Mode = mode, Value = value, Power = power }));
        Assert.Equal(before, Shorted(bench, id), 12);
        Assert.Contains(Answer(bench, id).Remarks, r => r.StartsWith("Reading not weighed, “C14: ", StringComparison.Ordinal) && r.Contains(why, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("C14 +", "IC3 pin 8", "so it is of what lies between")]
    [InlineData("C99", null, "C99 is not among the parts of Corvane K-61")]
    [InlineData("C14 +", "ground", "put both leads on C14")]
    [InlineData("somewhere", null, "names no part of Corvane K-61")]
    public void A_reading_that_is_of_no_one_part_is_not_weighed(string from, string? to, string why)
    {
        var id = TakeIn(bench, "nothing on the display, no sound");
        Written(bench.Live.Steps.Reading(id, new(default, "x: 2 R") { From = from, To = to, Mode = "ohms", Value = "2 R" }));
        Assert.Contains(Answer(bench, id).Remarks, r => r.Contains(why, StringComparison.Ordinal));
    }

    /// <summary>Whatever was noted is either weighed or named with what to do: never skipped in silence.</summary>
    [Fact]
    public void Every_reading_is_weighed_or_the_answer_says_why_not()
    {
        var id = TakeIn(bench, "nothing on the display, no sound");
        Read[] odd =
        [
            new(default, "\U0001F4A5 odd 1"),
            new(default, "odd 2") { From = "C14", Value = "-5 R", Mode = "ohms" },
            new(default, "odd 3") { From = "C41", Value = "1e300 R", Mode = "ohms" },
            new(default, "odd 4") { From = "C41", Value = "unknown part", Mode = "component tester" },
            new(default, "odd 5") { From = "", To = "", Value = "none" },
            new(default, "odd 6") { From = "IC9 out", Value = "-1e30 V" },
            new(default, "odd 7") { From = "speaker", Value = "8 R" },
            new(default, "odd 8, sister of C14") { From = "C15", Value = "8 R" },
            new(default, "odd 9") { From = "-", To = "C14", Value = "OL" },
        ];
        foreach (var read in odd)
            Written(bench.Live.Steps.Reading(id, read));
        var answer = Answer(bench, id);
        Assert.All(odd, r => Assert.True(
            answer.Remarks.Any(said => said.Contains($"“{r.Text}”", StringComparison.Ordinal)) || answer.Evidence.Any(e => e.Words == r.Text), r.Text));
        Assert.All(answer.Causes, c => Assert.InRange(c.Probability, 0, 1));
    }

    [Fact]
    public void A_reading_without_a_unit_is_refused_with_a_message()
    {
        var id = TakeIn(bench, "nothing on the display, no sound");
        var refused = bench.Live.Steps.Reading(id, new(default, "C14: 4.9") { From = "C14", Value = "4.9" }).Refused!;
        Assert.Equal(RefusalKind.NotUnderstood, refused.Kind);
        Assert.Contains("without a unit", refused.What, StringComparison.Ordinal);
    }

    private static Read Ohms(string value, bool lifted) => new(default, $"C14: {value}")
    {
        From = "C14 +", To = "C14 -", Mode = "ohms", Value = value, Power = lifted ? "off, drained, one leg lifted" : "off, drained",
    };

    private static Read Look(string value, string circumstances) => new(default, $"C14: {value}{circumstances}")
    {
        From = "C14 +", To = "C14 -", Mode = "ohms", Value = value, Power = "off, drained",
    };

    private static double Shorted(DemoBench bench, string id) => Answer(bench, id).Cause(BackUp[0])!.Probability;

    private static string TakeIn(DemoBench bench, string complaint) =>
        Written(bench.Live.Steps.TakeIn(new() { Machine = Keyboard, Complaint = complaint })).Job!.Id;

    private static Job Job(DemoBench bench, string id) => bench.Live.Current.Notes.Find<Job>(id)!;

    private static Answer Answer(DemoBench bench, string id) => bench.Live.Current.AnswerFor(Job(bench, id)).Answer!;

    private static StepResult Written(StepResult result)
    {
        Assert.Null(result.Refused);
        return result;
    }
}
