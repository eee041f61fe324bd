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
    var cases = new CaseFolder(options.Cases).Read(options.Ask);
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
