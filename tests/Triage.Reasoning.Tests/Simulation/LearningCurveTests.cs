using System.Collections.Immutable;
using Triage.Reasoning.Learning;
using Xunit;

namespace Triage.Reasoning.Tests.Simulation;

/// <summary>Technicians as they are: they check some findings, write down some of those, and one diagnosis in twenty is wrong.</summary>
[Trait("run", "thorough")]
public class LearningCurveTests
{
    static readonly Habits Human = new() { Misdiagnoses = 0.05 };

    [Fact]
    public void LearnedNumbers_ApproachTheTruth_AsJobsGrow()
    {
        double[] errors = [.. new[] { 200, 1000, 5000 }.Select(jobs => Enumerable.Range(0, 4).Average(seed => Error(new(seed, Habits.AsModelled), jobs)))];

        Say($"mean error at 200, 1,000, 5,000 jobs: {errors[0]:F4}, {errors[1]:F4}, {errors[2]:F4}");
        Assert.True(errors[1] < 0.8 * errors[0]);
        Assert.True(errors[2] < 0.8 * errors[1]);
    }

    [Fact]
    public void CountingSilenceAsAbsence_ForecastsWorse()
    {
        double[] honest = [.. Enumerable.Range(0, 3).Select(seed => HeldOut(seed, job => job))];
        double[] silent = [.. Enumerable.Range(0, 3).Select(seed => HeldOut(seed, SilenceIsAbsence))];

        Say($"log-loss {honest.Average():F3} against {silent.Average():F3} with silence counted as absence");
        Assert.All(honest.Zip(silent), pair => Assert.True(pair.First < pair.Second));
    }

    [Fact]
    public void PrequentialScore_BeatsBaseRates_ByAMarginThatGrows()
    {
        var runs = Enumerable.Range(0, 8).Select(seed => Prequential.Run(SixMachines.Notes, new SimulatedWorkshop(seed, Human).Jobs(600), LearnerSettings.Default, NaiveRanking.Of)).ToArray();
        double[] margins = [.. new[] { (0, 50), (50, 200), (200, 600) }.Select(block => Margin(runs, block.Item1, block.Item2))];

        Say($"base rates' log-loss less the ranking's, jobs 1–50, 51–200, 201–600: {margins[0]:F3}, {margins[1]:F3}, {margins[2]:F3}");
        Say($"ranking {PredictionScore.Of(runs.SelectMany(run => run).Select(f => f.Ranked))}; base rates {PredictionScore.Of(runs.SelectMany(run => run).Select(f => f.BaseRates))}");
        Assert.True(margins[0] > 0);
        Assert.True(margins[1] > margins[0]);
        Assert.True(margins[2] > margins[1]);
    }

    [Fact]
    public void QuietRepairs_ShowHowOftenAndHowSoonTheyComeBack()
    {
        Learned learned = Learner.Learn(SixMachines.Notes, new SimulatedWorkshop(5, Habits.AsModelled).Jobs(3000), LearnerSettings.Default);

        double[] holds = [.. SixMachines.Notes.Faults.Select(fault => learned.Holds("mend", fault.Id)!.Value).Where(e => e.Weight > 50).Select(e => e.Mean)];
        Say($"holds {holds.Average():F3}, back after {learned.Epoch.Comebacks.MeanDays:F1} days");
        Assert.Equal(SimulatedWorkshop.Cures, holds.Average(), 0.05);
        Assert.Equal(SimulatedWorkshop.ComebackDays, learned.Epoch.Comebacks.MeanDays, 5.0);
    }

    static double Margin(ImmutableArray<Forecast>[] runs, int from, int to)
    {
        Forecast[] block = [.. runs.SelectMany(run => run[from..to])];
        return PredictionScore.Of(block.Select(f => f.BaseRates)).LogLoss - PredictionScore.Of(block.Select(f => f.Ranked)).LogLoss;
    }

    static double HeldOut(int seed, Func<JobRecord, JobRecord> written)
    {
        var jobs = new SimulatedWorkshop(seed, Human).Jobs(900);
        Learned learned = Learner.Learn(SixMachines.Notes, jobs[..600].Select(written), LearnerSettings.Default);
        return jobs[600..].Where(job => job.Causes.Length == 1).Average(job =>
        {
            var ranked = NaiveRanking.Of(learned, written(job));
            return -Math.Log(Math.Max(1e-15, ranked[job.Causes[0].Fault] / ranked.Values.Sum()));
        });
    }

    static JobRecord SilenceIsAbsence(JobRecord job) => job with
    {
        Checked = [.. job.Checked, .. SixMachines.Notes.Findings.Where(finding => job.Checked.All(seen => seen.Finding != finding.Id)).Select(finding => new CheckedFinding(finding.Id, finding.Values[0]))],
    };

    /// <summary>Mean absolute error of shares and links on every device.</summary>
    static double Error(SimulatedWorkshop workshop, int jobs)
    {
        Learned learned = Learner.Learn(SixMachines.Notes, workshop.Jobs(jobs), LearnerSettings.Default);
        return (from device in SixMachines.Devices
                from fault in SixMachines.Notes.Faults
                from error in (double[])[
                    Math.Abs(learned.Share(fault.Id, device).Mean - workshop.Truth.Share(fault.Id, device)),
                    .. fault.Shows.Select(link => Math.Abs(learned.Link(fault.Id, link.Finding, device)!.Mean[0] - workshop.Truth.Link(fault.Id, link.Finding, device)[0]))]
                select error).Average();
    }

    static void Say(string text) => TestContext.Current.TestOutputHelper!.WriteLine(text);
}
