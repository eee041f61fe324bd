using System.Collections.Immutable;
using System.Globalization;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Learning;
using Triage.Reasoning.Tests.Simulation;
using Triage.Search.Causes;
using Triage.Workshop;
using Triage.Workshop.Reviews;

namespace Triage.Tools.Soybean;

/// <summary>Every job forecast before it is counted: the demo workshop's, a simulated workshop's, the soybean cases.</summary>
internal static class Forecasts
{
    private const int Simulated = 600;

    public static async Task Print(TextWriter to, SoybeanCases cases, string books)
    {
        await using var demo = LiveBench.Open(new()
        {
            Books = [new("demo", Path.Combine(books, "demo")), new("common", Path.Combine(books, "common"))],
            Watch = false,
        });
        Show(to, "demo workshop", demo.Current.Forecasts());
        Simulate(to, "simulated, as modelled", Habits.AsModelled);
        Simulate(to, "simulated, dependent findings", new() { Severity = 0.8, Misdiagnoses = 0.05 });
        Show(to, "soybean cases", cases.Bench.Forecasts());
    }

    private static void Show(TextWriter to, string title, ForecastReview review)
    {
        var table = new ScoreTable(to, string.Create(CultureInfo.InvariantCulture, $"{title}, {review.Jobs} jobs"));
        foreach (var (name, score) in review.Scores)
            table.Line(name, score);
        to.WriteLine();
    }

    /// <summary>The network of learned numbers, as in the bench.</summary>
    private static void Simulate(TextWriter to, string title, Habits habits)
    {
        var jobs = new SimulatedWorkshop(1, habits).Jobs(Simulated);
        var forecasts = Prequential.Run(SixMachines.Notes, jobs, LearnerSettings.Default, Rank);
        var against = new DiscriminativeForecasts([.. SixMachines.Notes.Faults.Select(f => f.Id), Prequential.Unlisted], jobs, forecasts, CancellationToken.None);
        var table = new ScoreTable(to, string.Create(CultureInfo.InvariantCulture, $"{title}, {Simulated}"));
        table.Line("the bench's network", PredictionScore.Of(forecasts.Select(f => f.Ranked)));
        table.Line("base rates", PredictionScore.Of(forecasts.Select(f => f.BaseRates)));
        table.Line("maximum entropy (Microsoft.ML)", PredictionScore.Of(against.By(CauseTrainer.MaximumEntropy)));
        table.Line("averaged perceptrons (Microsoft.ML)", PredictionScore.Of(against.By(CauseTrainer.AveragedPerceptron)));
        to.WriteLine();
    }

    private static ImmutableDictionary<string, double> Rank(Learned learned, JobRecord unit)
    {
        var posterior = PosteriorInference.Of(LearnedNetwork.On(unit.Levels, learned), LearnedNetwork.Evidence(unit));
        return SixMachines.Notes.Faults.Select((f, r) => KeyValuePair.Create(f.Id, posterior.Marginals[r].Skip(1).Sum())).ToImmutableDictionary();
    }
}
