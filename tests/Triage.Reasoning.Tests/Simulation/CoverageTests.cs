using System.Collections.Immutable;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Learning;
using Triage.Reasoning.Networks;
using Xunit;

namespace Triage.Reasoning.Tests.Simulation;

/// <summary>How often intervals that say 90 % hold the true number, over simulated workshops of 120 jobs.</summary>
[Trait("run", "thorough")]
public class CoverageTests
{
    const int Jobs = 120;
    const double Level = 0.9;

    [Fact]
    public void NinetyPercentIntervals_CoverBetween85And95_OverFiveHundredWorkshopsThatFitTheModel()
    {
        var coverage = Over(500, Habits.AsModelled);

        Assert.All(coverage, each => Assert.InRange(each.Value, 0.85, 0.95));
    }

    [Fact]
    public void WhereOneJobInTenIsMisdiagnosed_SharesOnADeviceAreCoveredBelow75Percent()
    {
        Assert.InRange(Over(100, new() { Misdiagnoses = 0.1 })["shares device"], 0.4, 0.75);
    }

    [Fact]
    public void WhereFindingsOfOneCauseDependOnEachOther_IntervalsStillCoverAtLeast80Percent()
    {
        var coverage = Over(100, new() { Severity = 0.8 });

        Assert.All(coverage, each => Assert.InRange(each.Value, 0.8, 0.95));
    }

    static Dictionary<string, double> Over(int workshops, Habits habits)
    {
        var coverage = Enumerable.Range(0, workshops).SelectMany(seed => Of(seed, habits)).GroupBy(c => c.What).ToDictionary(g => g.Key, g => g.Average(c => c.Covered ? 1.0 : 0));
        TestContext.Current.TestOutputHelper!.WriteLine(string.Join(", ", coverage.Select(c => $"{c.Key} {c.Value:P1}")));
        return coverage;
    }

    static IEnumerable<(string What, bool Covered)> Of(int seed, Habits habits)
    {
        var workshop = new SimulatedWorkshop(seed, habits);
        Learned learned = Learner.Learn(SixMachines.Notes, workshop.Jobs(Jobs), LearnerSettings.Default);
        return [.. Numbers(workshop.Truth, learned), .. Posteriors(workshop, workshop.Job(Jobs), learned, seed)];
    }

    static IEnumerable<(string What, bool Covered)> Numbers(HiddenTruth truth, Learned learned)
    {
        ImmutableArray<(string Name, ImmutableArray<string> Levels)> places =
            [("everywhere", []), ("class", SixMachines.Devices[0][1..]), ("device", SixMachines.Devices[0]), ("rare device", SixMachines.Devices[^1])];
        return from place in places
               from fault in SixMachines.Notes.Faults
               from covered in ((string, bool)[])[
                   ($"shares {place.Name}", Holds(learned.Share(fault.Id, place.Levels), truth.Share(fault.Id, place.Levels))),
                   .. fault.Shows.Select(link => ($"links {place.Name}",
                       Holds(learned.Link(fault.Id, link.Finding, place.Levels)![0], truth.Link(fault.Id, link.Finding, place.Levels)[0])))]
               select covered;
    }

    static IEnumerable<(string What, bool Covered)> Posteriors(SimulatedWorkshop workshop, JobRecord unit, Learned learned, int seed)
    {
        Network network = LearnedNetwork.On(unit.Levels, learned), hidden = workshop.NetworkOn(unit.Levels);
        Evidence evidence = LearnedNetwork.Evidence(unit);
        var intervals = SampledIntervals.Of(network, evidence, seed, level: Level).AtStart;
        Posterior truth = PosteriorInference.Of(hidden, evidence), shown = PosteriorInference.Of(network, evidence);
        return SixMachines.Notes.Faults.Select((fault, r) => ("posterior", Within(intervals[fault.Id].With(Chance(shown, r)), Chance(truth, r))));
    }

    static double Chance(Posterior posterior, int root) => posterior.Marginals[root].Skip(1).Sum();

    static bool Within(Interval interval, double truth) => truth >= interval.Lower && truth <= interval.Upper;

    static bool Holds(Estimate estimate, double truth) => Within(estimate.Interval(Level), truth);
}
