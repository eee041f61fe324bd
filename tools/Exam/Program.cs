using Triage.Search.Meaning;
using Triage.Tools.Exam;
using Triage.Tools.Exam.Cases;
using Triage.Tools.Exam.Paper;

if (Options.Read(args) is not { } options)
{
    Console.Error.WriteLine(Options.Usage);
    return 2;
}

// texts already understood, as the command remembers them; only a cache
var local = Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData);
var meaning = new SentenceVectors(new(local.Length == 0 ? null : Path.Combine(local, "triage", "sentence-vectors")));
try
{
    if (options.Play && options.Ask.IsEmpty)
    {
        await new Play(options, meaning, Console.In, Console.Out).Of([]);
        return 0;
    }

    var cases = new CaseFolder(options.Cases).Read(options.Ask);
    if (options.Play)
    {
        await new Play(options, meaning, Console.In, Console.Out).Of(cases);
        return 0;
    }

    if (options.Ids)
    {
        await new Keys(options, meaning, Console.Out).Of(cases);
        return 0;
    }

    var scores = await new Examination(options, meaning, Console.Out).Of(cases);
    foreach (var line in Report.Text(scores))
        Console.WriteLine(line);
    if (options.Json)
        Console.WriteLine(Report.Json(scores));
    return 0;
}
catch (Exception e) when (e is IOException or InvalidDataException or UnauthorizedAccessException)
{
    Console.Error.WriteLine(e.Message);
    return 1;
}
