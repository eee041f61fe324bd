using System.Text.Json;
using Triage.Reasoning.Learning;
using Triage.Tools.Soybean;

if (args is not [var data, .. var rest] || rest is not ([] or ["--json"] or ["--questions"]))
{
    Console.Error.WriteLine("Usage: tools/soybean [--json | --questions]");
    return 2;
}

var folder = Directory.CreateTempSubdirectory("soybean-");
try
{
    await using var cases = SoybeanCases.BringIn(data, folder.FullName);
    if (rest is ["--questions"])
    {
        QuestionTable.Print(Console.Out, cases, data);
        return 0;
    }

    var ranking = PredictionScore.Of(FoldRanking.All(cases, fold => fold.Answers()));
    var dependent = PredictionScore.Of(FoldRanking.All(cases, fold => fold.Dependent()));
    ScoreTable.Print(Console.Out, ranking, dependent, data);
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
