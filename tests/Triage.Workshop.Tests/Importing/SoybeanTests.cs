using System.Globalization;
using Triage.Notes.Kinds;
using Triage.Reasoning.Learning;
using Triage.Tools.Soybean;
using Triage.Workshop.Exchange.Importing;
using Triage.Workshop.Steps;
using Xunit;

namespace Triage.Workshop.Tests.Importing;

/// <summary>
/// 683 diagnosed cases (Michalski and Chilausky 1980; UCI "Soybean (Large)") as jobs, against the baselines beside the data
/// (scikit-learn 1.2.1 and e1071 1.7-13 on the same folds).
/// </summary>
public sealed class SoybeanTests(SharedSoybeans shared)
{
    private static readonly string Data = SharedSoybeans.Data;

    private readonly SoybeanCases cases = shared.Cases;

    [Fact]
    public void AllCases_ComeInAsJobs_WithUncheckedCellsLeftOut()
    {
        var jobs = cases.Bench.Notes.Jobs.ToList();

        Assert.Equal((683, 19, 35), (jobs.Count, cases.Causes.Length, cases.Bench.Notes.Of<Finding>().Count()));
        Assert.Equal(23905 - 2337, jobs.Sum(j => j.Log.Length)); // missing cells as counted in soybean.md
        Assert.Empty(cases.Bench.Problems);
    }

    [Fact]
    public void HeldOutCases_AreRankedBetterThanByEveryBaseline()
    {
        var score = PredictionScore.Of(FoldRanking.All(cases, fold => fold.Answers()));

        Assert.Equal(683, score.Count);
        Assert.InRange(Math.Round(683 * score.Top1), 641, 683);
        Assert.InRange(score.Top3, 0.998, 1);
        Assert.InRange(score.LogLoss, 0, 0.16);
        Assert.InRange(score.CalibrationError, 0, 0.03);
        foreach (var baseline in (string[])["nb_laplace1_numpy", "logreg_l2_C1", "random_forest_500", "decision_tree"])
        {
            Assert.True(score.Top1 > Baseline(baseline, "top1"));
            Assert.True(score.LogLoss < Baseline(baseline, "logloss"));
            Assert.True(score.CalibrationError < Baseline(baseline, "ece15"));
        }
    }

    /// <summary>The other nine folds brought in as a book of their own, and asked as the command line asks.</summary>
    [Fact]
    public async Task Ask_OnHeldOutCases_GivesThePosteriorsOfTheTool()
    {
        var held = cases.Folds[0][..10];
        var expected = new FoldRanking(cases, cases.Folds[0]).Answers();
        await using var bench = Others(cases.Folds[0].Select(j => j.Id).ToHashSet());

        foreach (var (job, forecast) in held.Zip(expected))
        {
            var answer = bench.Steps.Ask("soybean-plant", "", [.. job.Log.OfType<Saw>().Select(s => new SeenFinding(s.Finding, s.Value))]).Answer!;

            var chances = answer.ExactlyOne();
            Assert.Equal(cases.Causes.Length, chances.Count);
            Assert.All(cases.Causes.Zip(forecast.Probabilities), c => Assert.Equal(c.Second, chances[c.First], 1e-9));
        }
    }

    [Fact]
    public void Complaint_MadeOfColumnsAndValues_IsUnderstood()
    {
        var jobs = cases.Folds[0][..10];

        foreach (var job in jobs)
        {
            var complaint = string.Join("; ", job.Log.OfType<Saw>().Select(s => $"{cases.Bench.Notes.Find<Finding>(s.Finding)!.Name} {s.Value}"));
            var understood = cases.Bench.Recogniser.Recognise(complaint, "soybean-plant");

            Assert.Equal(job.Log.OfType<Saw>().Select(s => (s.Finding, s.Value)).Order(), understood.Findings.Select(f => (f.Finding, f.Value)).Order());
        }
    }

    private LiveBench Others(HashSet<string> held)
    {
        var rows = File.ReadAllLines(Path.Combine(Data, "soybean.csv"));
        var table = shared.Beside("others.csv");
        File.WriteAllLines(table, rows.Where((_, i) => i == 0 || !held.Contains("soybean-" + i.ToString("00000", CultureInfo.InvariantCulture))));
        var book = shared.Beside("others");
        Assert.Equal(683 - held.Count, Import.Run(table, ColumnMapFile.Read(Path.Combine(Data, "soybean-map.json")).Map!, book, stop: TestContext.Current.CancellationToken).Jobs);
        return LiveBench.Open(new() { Books = [new("others", book)], Watch = false });
    }

    private static double Baseline(string model, string score)
    {
        var lines = File.ReadLines(Path.Combine(Data, "soybean-baselines.csv")).Select(l => l.Split(',')).ToList();
        return double.Parse(lines.Single(l => l[0] == model && l[1] == "pooled")[Array.IndexOf(lines[0], score)], CultureInfo.InvariantCulture);
    }
}
