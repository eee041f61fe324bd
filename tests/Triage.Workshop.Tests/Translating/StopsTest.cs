using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Reasoning.Planning;
using Triage.Workshop.Answers;
using Triage.Workshop.Chances;
using Triage.Workshop.Knowledge;
using Triage.Workshop.Model;
using Xunit;

namespace Triage.Workshop.Tests.Translating;

/// <summary>Which ways of stopping there are, at what cost to the owner, and which one is advised when.</summary>
public sealed class StopsTest(SharedDemo shared)
{
    private readonly DemoBench bench = shared.Bench;

    private const string Faint = "2026-023", Reset = "quillander-w200-clear", FieldMend = "renew-field-output";

    /// <summary>Half an hour at 14 an hour is 7; a tenth of 70 is 7.</summary>
    [Theory]
    [InlineData(20, AlwaysThere.Park, 20)]
    [InlineData(69, AlwaysThere.Park, 69)]
    [InlineData(71, AlwaysThere.PartOut, (71 * 0.9) + 7)]
    public void Taking_apart_pays_only_where_the_parts_are_worth_the_half_hour(double worth, string cheapest, double cost)
    {
        var problem = Problem(bench, Job(bench, Faint) with { Worth = worth });
        var stop = NextStep.Choose(problem, new(1) { Exact = false }).Ranked.First(r => r.Option is StopOption);
        Assert.Equal(cheapest, stop.Option.Id);
        Assert.Equal(cost, stop.ExpectedCost, 1e-9);
    }

    [Fact]
    public void What_is_worth_next_to_nothing_is_put_away_at_once()
    {
        Assert.Equal(AlwaysThere.Park, Next(bench, Job(bench, Faint) with { Worth = 0.1 }).Id);
    }

    /// <summary>A reset that is known to bring it back whenever it is done can be lived with.</summary>
    [Theory]
    [InlineData(Effect.Works, true)]
    [InlineData(Effect.NotSeen, false)]
    public void One_lives_with_a_reset_only_if_it_worked_every_time(Effect second, bool offered)
    {
        var job = Job(bench, Faint);
        var at = job.Log[^1].At;
        ImmutableArray<LogEntry> log =
        [
            .. job.Log, new ResetTried(at.AddHours(1), Reset, Effect.Works), new Held(at.AddHours(2), Reset, false, "power"), new ResetTried(at.AddHours(3), Reset, second),
        ];
        Assert.Equal(offered, Problem(bench, job with { Log = log }).Options.Any(o => o.Id == AlwaysThere.WorkAround));
    }

    /// <summary>Behind the back of a picture tube set only somebody licensed works: 15 minutes at 14 an hour, 50, and 14 days at 0.5 come to 60.5.</summary>
    [Theory]
    [InlineData(400, null, true)]
    [InlineData(55, null, false)]
    [InlineData(400, 30.0, false)]
    public void What_only_somebody_licensed_may_mend_is_handed_over_where_it_is_worth_that(double worth, double? limit, bool handedOver)
    {
        var job = WhiteLine with { Worth = worth, Consent = new() { SpendingLimit = limit } };
        var (problem, place) = (Problem(bench, job), Reasoned(bench, job).Network.Faults["field-output-dead"][0]);
        var sure = problem with
        {
            Belief = [new(1, [new(place.Root, place.State)])],
            Options = [.. problem.Options.Where(o => o is StopOption || o.Id is AlwaysThere.HandOver or FieldMend)],
        };
        var advice = NextStep.Choose(sure, new(100_000));
        Assert.Equal(handedOver, advice.Best.Option.Id == AlwaysThere.HandOver);
        Assert.Contains(advice.Blocked, b => b.Option.Id == FieldMend);
        Assert.All(advice.Ranked.Where(r => r.Option.Id == AlwaysThere.HandOver), r => Assert.Equal(60.5, r.PriceNow, 1e-9));
    }

    private static Job WhiteLine => new("line", "one white line across the screen")
    {
        Class = "picture-tube-display",
        Log = [new Saw(new(2026, 11, 1, 9, 0, 0, TimeSpan.Zero), "picture-height", "line")],
    };

    private static Job Job(DemoBench bench, string id) => bench.Live.Current.Notes.Find<Job>(id)!;

    private static Reasoned Reasoned(DemoBench bench, Job job)
    {
        var answering = new Answering(bench.Live.Current.Knows);
        return answering.Reason(job, bench.Live.Current.Knows.ScopeOf(job)!, bench.Live.Current.Learned);
    }

    private static RepairProblem Problem(DemoBench bench, Job job)
    {
        var reasoned = Reasoned(bench, job);
        var settings = bench.Live.Current.Settings;
        var rules = new HardRules(reasoned.Network.Scope, bench.Live.Current.Notes, job, settings);
        return new ProblemFromJob(reasoned.Network, reasoned.Actions, rules, job, reasoned.Evidence, settings, reasoned.Hypotheses(400, 1e-4)).Of();
    }

    private static NextBestStep Next(DemoBench bench, Job job) => new Answering(bench.Live.Current.Knows).For(job).Answer!.Next!;
}
