using System.Text.Json;
using System.Text.Json.Nodes;

namespace Triage.Tools.SolveNetworks;

/// <summary>A file of instances to a file of answers.</summary>
public static class Answers
{
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true };

    /// <param name="json">{"instances": [ … ]}.</param>
    /// <returns>{"answers": [ … ]}, in the same order.</returns>
    /// <exception cref="InvalidDataException">The file cannot be read as instances, or one of them makes no sense: says which and why, in one line.</exception>
    public static string Of(string json)
    {
        var answers = new JsonArray();
        foreach (var (node, index) in Instances(json).Select((node, i) => (node, i)))
        {
            answers.Add(Solve(node, index));
        }

        return new JsonObject { ["answers"] = answers }.ToJsonString(Indented);
    }

    private static JsonArray Instances(string json)
    {
        JsonNode? file;
        try
        {
            file = JsonNode.Parse(json);
        }
        catch (JsonException e)
        {
            throw new InvalidDataException($"This is not JSON: {e.Message}", e);
        }

        return file is JsonObject top && top.TryGetPropertyValue("instances", out var instances) && instances is JsonArray list
            ? list
            : throw new InvalidDataException("There is no list \"instances\" at the top. Its shape is in tests/data/bn2o.md.");
    }

    private static JsonObject Solve(JsonNode? node, int index)
    {
        var where = $"Instance {index + 1}{(node is JsonObject o && o["id"] is JsonValue id ? $" ({id})" : "")}";
        try
        {
            return Answer.Of(Instance.Read(node));
        }
        catch (Exception e) when (e is JsonException or InvalidDataException or ArgumentException or ArithmeticException or InvalidOperationException)
        {
            throw new InvalidDataException($"{where}: {e.Message}", e);
        }
    }
}
