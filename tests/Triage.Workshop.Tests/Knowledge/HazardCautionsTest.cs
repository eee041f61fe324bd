using Triage.Notes.Kinds;
using Triage.Workshop.Answers;
using Triage.Workshop.Knowledge;
using Triage.Workshop.Model;
using Xunit;

namespace Triage.Workshop.Tests.Knowledge;

/// <summary>No step that meets a hazard of its machine is shown without the caution.</summary>
public sealed class HazardCautionsTest(SharedDemo shared)
{
    private readonly DemoBench bench = shared.Bench;

    private static readonly Hazard[] BehindCovers = [Hazard.Mains, Hazard.StoredCharge, Hazard.PictureTube, Hazard.MicrowaveHighVoltage, Hazard.Laser];

    [Fact]
    public void EveryStepOfEveryClassCarriesTheCautionsOfWhatItOpensOrPowers()
    {
        var notes = bench.Live.Current.Notes;
        var met = 0;
        foreach (var of in notes.Of<DeviceClass>())
        {
            var scope = DeviceScope.Of(notes, null, of);
            var learned = bench.Live.Current.Learned;
            var actions = new ActionsOfNotes(NetworkFromNotes.Build(scope, learned, notes, []), notes, learned);
            var cards = new StepCards(notes, scope, actions);
            var steps = scope.Tests.Select(t => (t.Id, t.Effort)).Concat(scope.Resets.Select(r => (r.Id, r.Effort)))
                .Concat(actions.Fixes.Values.Select(m => (m.Id, m.Effort)));
            foreach (var (id, effort) in steps)
            {
                var shown = cards.Of(id).Cautions.Select(c => c.Hazard).ToHashSet();
                foreach (var hazard in of.Cautions.Where(c => BehindCovers.Contains(c.Hazard) && scope.Fits(c.Build) && Meets(c, effort, scope)).Select(c => c.Hazard))
                {
                    Assert.True(shown.Contains(hazard), $"{of.Id}: {id} is shown without {hazard}");
                    met++;
                }
            }
        }

        Assert.True(met > 100);
    }

    /// <summary>A caution that names a cover is met by what goes behind it; else by whatever is opened, and mains by whatever is powered.</summary>
    private static bool Meets(Caution caution, Effort effort, DeviceScope scope) =>
        effort.Power >= caution.Power
        && (caution.Reach is { } reach ? scope.WayTo(effort).Any(cover => cover.Id == reach)
            : effort.Access is not null || (caution.Hazard == Hazard.Mains && effort.Power != PowerStage.Cold));
}
