using System.Collections.Immutable;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Learning;
using Xunit;

namespace Triage.Reasoning.Tests.Simulation;

/// <summary>
/// Machines that are not noisy-OR: every fault is mild or severe, so that its findings depend on each other. What forecasts lose to somebody
/// who knows the true numbers is stated, with findings independent given the cause and with pairs counted together.
/// </summary>
[Trait("run", "long")]
public class DependentTruthTests
{
    const int Forecast = 300;

    [Theory]
    [InlineData(600)]
    [InlineData(3000)]
    public void WhereFindingsDependOnEachOther_ForecastsLoseLittleToTheTruth_AndPairsNeverCostMuch(int jobs)
    {
        double[][] losses = [.. Enumerable.Range(0, 4).Select(seed => Losses(seed, jobs))];
        double independent = losses.Average(l => l[0]), paired = losses.Average(l => l[1]), truth = losses.Average(l => l[2]);

        TestContext.Current.TestOutputHelper!.WriteLine($"{jobs} jobs: log-loss {independent:F3} independent, {paired:F3} with pairs, {truth:F3} with the true numbers; parents in {losses.Count(l => l[3] > 0)} of {losses.Length}");
        Assert.InRange(independent - truth, 0, 0.15);
        Assert.InRange(paired, truth, independent + 0.01);
    }

    static double[] Losses(int seed, int count)
    {
        var workshop = new SimulatedWorkshop(seed, new() { Severity = 0.8 });
        ImmutableArray<JobRecord> jobs = workshop.Jobs(count + Forecast);
        Learned learned = Learner.Learn(SixMachines.Notes, jobs[..count], LearnerSettings.Default);
        JobRecord[] units = [.. jobs[count..].Where(job => job.Causes.Length == 1)];
        return
        [
            units.Average(unit => Loss(unit, fault => Math.Log(Share(learned, unit, fault)) + unit.Checked.Sum(seen => Math.Log(Seen(learned, unit, fault, seen))))),
            units.Average(unit => Loss(unit, fault => Math.Log(Share(learned, unit, fault)) + (learned.Dependent(unit.Levels) is { } dependent
                ? dependent.LogLikelihood(fault, unit.Checked) / dependent.Strength.Temperature(unit.Checked.Length)
                : unit.Checked.Sum(seen => Math.Log(Seen(learned, unit, fault, seen)))))),
            units.Average(unit => Loss(unit, fault => True(workshop, unit, fault))),
            learned.Epoch.Dependence.Parents.Length,
        ];
    }

    static double Loss(JobRecord unit, Func<string, double> log)
    {
        double[] logs = [.. SixMachines.Notes.Faults.Select(fault => log(fault.Id))];
        return logs.Max() + Math.Log(logs.Sum(l => Math.Exp(l - logs.Max()))) - log(unit.Causes[0].Fault);
    }

    static double Share(Learned learned, JobRecord unit, string fault) => learned.Share(fault, unit.Levels).Mean;

    static double Seen(Learned learned, JobRecord unit, string fault, CheckedFinding seen) => Math.Max(1e-6,
        (learned.Seen(fault, seen.Finding, unit.Levels) ?? learned.Ambient(seen.Finding)).Mean[SixMachines.Notes.Findings.Single(f => f.Id == seen.Finding).Values.IndexOf(seen.Value)]);

    /// <summary>Mild or severe alone.</summary>
    static double True(SimulatedWorkshop workshop, JobRecord unit, string fault)
    {
        var network = workshop.NetworkOn(unit.Levels);
        int root = SixMachines.Notes.Faults.Select(f => f.Id).ToList().IndexOf(fault);
        SingleFault[] alone = SingleFaults.Of(network, LearnedNetwork.Evidence(unit), [new(root, 1), new(root, 2)]);
        double most = alone.Max(a => a.LogMass);
        return most + Math.Log(alone.Sum(a => Math.Exp(a.LogMass - most)));
    }
}
