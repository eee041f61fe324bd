using Triage.Notes.Kinds;
using Triage.Workshop.Model;
using Xunit;

namespace Triage.Workshop.Tests.Translating;

/// <summary>What is heard of a machine later is learned from: no news is no news, good news is quiet days, a comeback is a repair that did not hold.</summary>
public sealed class FollowedUpTest(SharedDemo shared)
{
    private readonly DemoBench bench = shared.Bench;

    private static readonly DateTimeOffset Mended = new(2024, 3, 1, 12, 0, 0, TimeSpan.Zero);

    [Fact]
    public void A_follow_up_is_quiet_days_or_a_comeback_of_what_was_done_last()
    {
        var notes = bench.Live.Current.Notes;
        var reset = notes.Of<Reset>().First(r => r.FormOf is null && r.Clears.Length > 0);
        var fault = reset.Clears[0].Fault;
        var job = new Job("x", "x")
        {
            Closed = Mended,
            Outcome = JobOutcome.Mended,
            Causes = [new(fault, Grade.Measured)],
            Log = [new ResetTried(Mended.AddHours(-3), reset.Id, Effect.Works), new Fixed(Mended.AddHours(-1), "resolder", Effect.Works)],
        };

        Assert.Equal([(null, 0), (null, 0)], Learned(job));
        Assert.Equal([(null, 30.125), (null, 30.042)], Learned(job with { FollowUps = [new(Mended.AddDays(30), false, null)] }));
        Assert.Equal([(null, 30.125), (false, 40.042)], Learned(job with { FollowUps = [new(Mended.AddDays(30), false, null), new(Mended.AddDays(40), true, null)] }));

        IEnumerable<(bool?, double)> Learned(Job of) => RecordFromJob.Of(of, notes, 1)!.Tried.Select(t => (t.Held, Math.Round(t.QuietDays, 3)));
    }
}
