using Triage.Notes.Kinds;
using Triage.Workshop.Answers;
using Triage.Workshop.Steps;
using Xunit;

namespace Triage.Workshop.Tests.Stories;

/// <summary>A keyboard with memory back-up: lamp lit, nothing on the display, no sound. A reset wakes it until power is lost.</summary>
public sealed class BuriedResetTest(SharedDemo shared)
{
    private const string Complaint = "power lamp lit, nothing on the display, no sound";
    private const string Shorted = "backup-capacitor-shorted";
    private static readonly string[] BackUpFaults = [Shorted, "backup-capacitor-leaking", "trace-eaten"];

    [Fact]
    public void Words_become_findings_with_negations_right()
    {
        var bench = shared.Bench;
        var asking = bench.Live.Steps.Ask("Pellwick S-40", Complaint);
        Assert.Equal(
            ["display=blank from “nothing on the display”", "power-lamp=lit from “power lamp lit”", "sound=none from “no sound”"],
            asking.Recognition.Findings.Select(f => $"{f.Finding}={f.Value} from “{f.Words}”").Order(StringComparer.Ordinal));
        Assert.Empty(asking.Recognition.NotUnderstood);
    }

    [Fact]
    public void A_reset_is_among_the_first_things_to_try_and_says_what_it_erases()
    {
        var bench = shared.Bench;
        var reset = bench.Live.Steps.Ask("Pellwick S-40", Complaint).Answer!.Resets[0];
        Assert.Equal("pellwick-s40-reset", reset.Reset);
        Assert.NotEmpty(reset.Steps);
        Assert.Contains("ask the owner or save it first", reset.Blocked, StringComparison.Ordinal);
        Assert.InRange(reset.ChanceWorks, 0.3, 0.95);
        Assert.True(reset.ChanceHolds < reset.ChanceWorks);
        Assert.Contains("gone after power loss: most likely Back-up capacitor", reset.Tells, StringComparison.Ordinal);
    }

    [Fact]
    public void A_reset_that_erases_is_refused_until_the_owner_agreed()
    {
        var bench = shared.Bench;
        var steps = bench.Live.Steps;
        var id = TakeIn(bench, "Pellwick S-40").Id;
        Assert.Equal(RefusalKind.NotAllowed, steps.Reset(id, "pellwick-s40-reset", Effect.Works).Refused!.Kind);
        Assert.DoesNotContain(bench.Live.Current.Notes.Find<Job>(id)!.Log, e => e is ResetTried);
        Written(steps.Agree(id, new(MayErase: true)));
        Written(steps.Reset(id, "pellwick-s40-reset", Effect.Works));
    }

    [Fact]
    public void Gone_after_power_loss_brings_the_back_up_supply_to_the_top_with_the_reason_in_words()
    {
        var bench = shared.Bench;
        var id = TakeIn(bench, "Pellwick S-40").Id;
        var before = Answer(bench, id).Causes.Where(c => BackUpFaults.Contains(c.Fault)).Sum(c => c.Probability);
        ResetHoldsUntilPowerIsLost(bench, id);
        var after = Answer(bench, id);
        Assert.All(after.Causes.Take(2), c => Assert.Contains(c.Fault, BackUpFaults));
        Assert.True(after.Causes.Where(c => BackUpFaults.Contains(c.Fault)).Sum(c => c.Probability) > before + 0.1);
        Assert.Contains("only held until power was lost", after.Causes[0].Why, StringComparison.Ordinal);
        Assert.True(after.Cause("settings-corrupted")!.Probability < 0.1);
    }

    [Fact]
    public void The_checks_come_in_place_first_and_one_leg_is_lifted_only_then()
    {
        var bench = shared.Bench;
        var steps = bench.Live.Steps;
        var id = TakeIn(bench, "Pellwick S-40").Id;
        ResetHoldsUntilPowerIsLost(bench, id);
        Assert.Contains(Answer(bench, id).Next!.Id, new[] { "look-for-leakage", "ohms-across-backup" });
        Written(steps.Tested(id, "look-for-leakage", "no"));
        var inPlace = Answer(bench, id).Next!;
        Assert.Equal("ohms-across-backup", inPlace.Id);
        Assert.Contains(inPlace.Cautions, c => c.Hazard == Hazard.StoredCharge);
        Written(steps.Tested(id, "ohms-across-backup", "flat-low"));
        Assert.Equal("ohms-across-backup-lifted", Answer(bench, id).Next!.Id);
        Written(steps.Tested(id, "ohms-across-backup-lifted", "flat-low"));
        var fix = Answer(bench, id).Next!;
        Assert.Equal("replace-backup-capacitor", fix.Id);
        Assert.NotEmpty(fix.Part!.MustMatch);
        Assert.True(fix.Part.WaitDays > 0 && fix.Part.Money > 0);
        Assert.NotNull(fix.Part.Rating);
    }

    [Fact]
    public void While_it_works_the_next_step_is_to_see_whether_it_lasts()
    {
        var bench = shared.Bench;
        var steps = bench.Live.Steps;
        var id = TakeIn(bench, "Pellwick S-40").Id;
        Written(steps.Agree(id, new(MayErase: true)));
        Written(steps.Reset(id, "pellwick-s40-reset", Effect.Works));
        var after = Answer(bench, id);
        Assert.True(after.Works);
        Assert.Equal(StepKind.Provoke, after.Next!.Kind);
        Assert.Equal(1, after.Next.Outcomes.Sum(o => o.Chance), 1e-9);
    }

    [Fact]
    public async Task Closed_as_measured_it_makes_the_same_complaint_on_another_model_rank_that_cause_higher()
    {
        await using var bench = DemoBench.Open();
        var before = Chance(bench, "Corvane K-49");
        var closed = Mend(bench, Shorted);
        var after = Chance(bench, "Corvane K-49");
        Assert.True(after > before);
        var taught = Assert.Single(closed.Taught, t => t.Device == "corvane-k49");
        Assert.Equal((before, after), (taught.Before, taught.After));
        var behind = bench.Live.Steps.Ask("Corvane K-49", Complaint).Answer!.Cause(Shorted)!.Jobs;
        // the pooling strengths were fitted again at this count of jobs, so that leaving it out comes back only nearly to where it was
        Assert.Equal(before, Assert.Single(behind, j => j.Job == closed.Job!.Id).Without!.Value, 5e-3);
    }

    [Fact]
    public async Task With_the_decisive_cause_the_other_way_the_ranking_moves_the_other_way()
    {
        await using var bench = DemoBench.Open();
        var before = Chance(bench, "Corvane K-49");
        Mend(bench, "settings-corrupted");
        Assert.True(Chance(bench, "Corvane K-49") < before);
    }

    private static Job TakeIn(DemoBench bench, string machine) =>
        Written(bench.Live.Steps.TakeIn(new() { Machine = machine, Complaint = Complaint })).Job!;

    private static void ResetHoldsUntilPowerIsLost(DemoBench bench, string id)
    {
        Written(bench.Live.Steps.Agree(id, new(MayErase: true)));
        Written(bench.Live.Steps.Reset(id, "pellwick-s40-reset", Effect.Works));
        Written(bench.Live.Steps.Held(id, "pellwick-s40-reset", stillWorks: false));
    }

    private static StepResult Mend(DemoBench bench, string cause)
    {
        var steps = bench.Live.Steps;
        var id = TakeIn(bench, "Pellwick S-40").Id;
        ResetHoldsUntilPowerIsLost(bench, id);
        Written(steps.Tested(id, "ohms-across-backup", "flat-low"));
        Written(steps.PartMoved(id, new(default, "backup-capacitor", PartState.Ordered) { Price = 2.4, Shipping = 5.9, LeadDays = 4 }));
        Written(steps.PartMoved(id, new(default, "backup-capacitor", PartState.TestedGood)));
        Written(steps.Fixed(id, "replace-backup-capacitor", Effect.Works, testedBefore: true));
        Written(steps.Held(id, "replace-backup-capacitor", stillWorks: true, "soak"));
        return Written(steps.Close(id, new() { Outcome = JobOutcome.Mended, Causes = [new(cause, Grade.Measured)], Minutes = 70 }));
    }

    private static double Chance(DemoBench bench, string machine) =>
        bench.Live.Steps.Ask(machine, Complaint).Answer!.Cause(Shorted)!.Probability;

    private static Answer Answer(DemoBench bench, string id) =>
        bench.Live.Current.AnswerFor(bench.Live.Current.Notes.Find<Job>(id)!).Answer!;

    private static StepResult Written(StepResult result)
    {
        Assert.Null(result.Refused);
        return result;
    }
}
