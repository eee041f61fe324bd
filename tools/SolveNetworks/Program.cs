using Triage.Tools.SolveNetworks;

if (args is not [var input, var output])
{
    Console.Error.WriteLine("Usage: tools/solve-networks IN.json OUT.json");
    return 2;
}

try
{
    File.WriteAllText(output, Answers.Of(File.ReadAllText(input)));
    return 0;
}
catch (Exception e) when (e is IOException or UnauthorizedAccessException or InvalidDataException)
{
    Console.Error.WriteLine($"{input}: {e.Message.ReplaceLineEndings(" ")}");
    return 2;
}
