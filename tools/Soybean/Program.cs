using System.Text.Json;
using Triage.Reasoning.Learning;
using Triage.Search.Causes;
using Triage.Tools.Soybean;

if (args is not [var data, .. var rest] || rest is not ([] or ["--json"] or ["--questions"] or ["--forecasts", _]))
{
    Console.Error.WriteLine("Usage: tools/soybean [--json | --questions], or tools/forecasts");
    return 2;
}

var folder = Directory.CreateTempSubdirectory("soybean-");
try
{
    await using var cases = SoybeanCases.BringIn(data, folder.FullName);
    if (rest is ["--forecasts", var books])
    {
        await Forecasts.Print(Console.Out, cases, books);
        return 0;
    }

    if (rest is ["--questions"])
    {
        QuestionTable.Print(Console.Out, cases, data);
        return 0;
    }

    var ranking = PredictionScore.Of(FoldRanking.All(cases, fold => fold.Answers()));
    var table = new ScoreTable(Console.Out, "");
    table.Line("the bench", ranking);
    table.Line("maximum entropy (Microsoft.ML)", PredictionScore.Of(FoldRanking.All(cases, fold => fold.Discriminative(CauseTrainer.MaximumEntropy))));
    table.Line("averaged perceptrons (Microsoft.ML)", PredictionScore.Of(FoldRanking.All(cases, fold => fold.Discriminative(CauseTrainer.AveragedPerceptron))));
    table.Baselines(Path.Combine(data, "soybean-baselines.csv"));
    if (rest.Length > 0)
        Console.WriteLine(JsonSerializer.Serialize(new { top1 = ranking.Top1, top3 = ranking.Top3, logLoss = ranking.LogLoss, brier = ranking.Brier, ece = ranking.CalibrationError }));
    return 0;
}
catch (Exception e) when (e is IOException or InvalidDataException or UnauthorizedAccessException)
{
    Console.Error.WriteLine(e.Message);
    return 1;
}
finally
{
    folder.Delete(recursive: true);
}
