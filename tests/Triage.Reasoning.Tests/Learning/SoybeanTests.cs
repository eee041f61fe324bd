using System.Collections.Immutable;
using Triage.Reasoning.Learning;
using Xunit;

namespace Triage.Reasoning.Tests.Learning;

[Trait("run", "long")]
public class SoybeanTests
{
    static readonly SoybeanCases Cases = SoybeanCases.Read();

    [Fact]
    public void Scores_OfNaiveBayesWithLaplace_AreThePublishedBaseline()
    {
        double[] expected = SoybeanCases.Baseline("nb_laplace1_numpy");

        PredictionScore score = PredictionScore.Of(Enumerable.Range(0, 10).SelectMany(Laplace));

        double[] actual = [score.Top1, score.Top3, score.LogLoss, score.Brier, score.CalibrationError];
        Assert.Equal(683, score.Count);
        for (int i = 0; i < expected.Length; i++) Assert.Equal(expected[i], actual[i], 1.1e-6);
    }

    [Fact]
    public void Learner_RanksHeldOutCases_NotWorseThanNaiveBayesWithLaplace()
    {
        PredictionScore score = PredictionScore.Of(Enumerable.Range(0, 10).SelectMany(Learnt));

        TestContext.Current.TestOutputHelper!.WriteLine($"{score.Top1 * 683:F0} right; {score}");
        Assert.InRange(Math.Round(score.Top1 * 683), 634, 683);
        Assert.InRange(score.LogLoss, 0, SoybeanCases.Baseline("nb_laplace1_numpy")[2]);
    }

    static IEnumerable<Prediction> Learnt(int fold)
    {
        Learned learned = Learner.Learn(SoybeanJobs.Knowledge(Cases), SoybeanJobs.Outside(Cases, fold), LearnerSettings.Default);
        return Predictions(fold, SoybeanJobs.LogShares(Cases, learned), SoybeanJobs.LogLinks(Cases, learned));
    }

    static IEnumerable<Prediction> Laplace(int fold)
    {
        var training = Cases.Rows.Where(row => row.Fold != fold).ToLookup(row => row.Class);
        double[] shares = [.. Cases.Classes.Select(c => Math.Log(training[c].Count()))];
        double[][][] links = [.. Cases.Classes.Select(c => Cases.Levels.Select((levels, a) => levels
            .Select(level => Math.Log((training[c].Count(row => row.Values[a] == level) + 1.0) / (training[c].Count(row => row.Values[a] != "") + levels.Length)))
            .ToArray()).ToArray())];
        return Predictions(fold, shares, links);
    }

    /// <summary>P(class | observed attributes), which are independent given the class.</summary>
    static IEnumerable<Prediction> Predictions(int fold, double[] logShares, double[][][] logLinks)
    {
        foreach (var row in Cases.Rows.Where(row => row.Fold == fold))
        {
            double[] log = [.. logShares.Select((share, c) => share + row.Values.Select((value, a) => value == "" ? 0 : logLinks[c][a][Array.IndexOf(Cases.Levels[a], value)]).Sum())];
            double[] chances = [.. log.Select(x => Math.Exp(x - log.Max()))];
            yield return new([.. chances.Select(x => x / chances.Sum())], Cases.ClassOf(row));
        }
    }
}
