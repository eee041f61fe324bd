using System.Text.Json;
using System.Text.Json.Nodes;
using Triage.Tools.SolveNetworks;

if (args is not [var input, var output])
{
    Console.Error.WriteLine("Usage: tools/solve-networks IN.json OUT.json");
    return 2;
}

try
{
    var instances = JsonNode.Parse(File.ReadAllText(input))!["instances"]!.AsArray();
    var answers = new JsonArray([.. instances.Select(i => Answer.Of(Instance.Read(i!)))]);
    File.WriteAllText(output, new JsonObject { ["answers"] = answers }.ToJsonString(new JsonSerializerOptions { WriteIndented = true }));
    return 0;
}
catch (Exception e) when (e is IOException or JsonException or UnauthorizedAccessException or InvalidDataException or ArgumentException)
{
    Console.Error.WriteLine($"{input}: {e.Message}");
    return 1;
}
