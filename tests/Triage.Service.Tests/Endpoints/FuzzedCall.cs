using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Triage.Service.Tests.Endpoints;

/// <summary>A call that nobody means well, from a seed: an operation of the OpenAPI document with a body that half fits it.</summary>
internal sealed class FuzzedCall(JsonElement document, Random random)
{
    private static readonly string[] Ids = ["2026-021", "2026-022", "2026-023", "2026-025", "2026-005", "none", "..%2F..", "%00", "2026-021%0d%0a", "corvane-k-61", new('x', 300)];

    private static readonly string[] Words =
        ["", " ", "C14", "ohms-across-backup", "flat-low", "no sound", "works", "belt", "case", "\u0000\u001b[2J", "12 R", "1e400", "NaN", "-0", "🎹", "../../etc", "a\nb: c", "'\"<script>", new('y', 5000)];

    private static readonly string[] Whole = ["", "null", "[]", "{}", "{", "\"x\"", "7", "1e400", "[[[[[[[[", "{\"a\":", "\u0000", "{\"" + new string('k', 4000) + "\":1}"];

    /// <summary>What was sent, to be read when it failed.</summary>
    public string Said { get; private set; } = "";

    public HttpRequestMessage Next()
    {
        var operations = document.GetProperty("paths").EnumerateObject()
            .Where(p => p.Name.StartsWith("/api/", StringComparison.Ordinal) && !p.Name.Contains("forecasts", StringComparison.Ordinal) && !p.Name.Contains("share", StringComparison.Ordinal))
            .SelectMany(p => p.Value.EnumerateObject().Where(m => m.Value.ValueKind is JsonValueKind.Object && m.Name is "get" or "post" or "put" or "patch" or "delete").Select(m => (Path: p.Name, Method: m.Name, What: m.Value))).ToArray();
        var (path, method, what) = operations[random.Next(operations.Length)];
        var address = Filled(path) + Query(what);
        var body = method is "get" or "delete" ? null : Body(what);
        Said = $"{method} {address} {body}";
        return new(new(method.ToUpperInvariant()), new Uri(address, UriKind.Relative)) { Content = body is null ? null : new StringContent(body, Encoding.UTF8, random.Next(20) == 0 ? "text/plain" : "application/json") };
    }

    private string Filled(string path)
    {
        while (path.IndexOf('{') is var from and >= 0)
            path = path[..from] + (path[from..].StartsWith("{entry", StringComparison.Ordinal) ? $"{random.Next(-2, 6)}" : Ids[random.Next(Ids.Length)]) + path[(path.IndexOf('}') + 1)..];
        return path;
    }

    private string Query(JsonElement what) => !what.TryGetProperty("parameters", out var parameters) ? "" : "?" + string.Join('&', parameters.EnumerateArray()
        .Where(p => p.GetProperty("in").GetString() == "query" && random.Next(2) == 0)
        .Select(p => $"{p.GetProperty("name").GetString()}={Uri.EscapeDataString(random.Next(3) == 0 ? $"{random.Next()}" : Words[random.Next(Words.Length)])}"));

    private string Body(JsonElement what)
    {
        if (random.Next(6) == 0 || !what.TryGetProperty("requestBody", out var wanted) || !wanted.GetProperty("content").TryGetProperty("application/json", out var json))
            return Whole[random.Next(Whole.Length)];
        return Value(json.GetProperty("schema"), 0)?.ToJsonString() ?? "null";
    }

    private JsonNode? Value(JsonElement schema, int depth)
    {
        if (schema.TryGetProperty("$ref", out var named))
            schema = document.GetProperty("components").GetProperty("schemas").GetProperty(named.GetString()!.Split('/')[^1]);
        if (schema.TryGetProperty("oneOf", out var either))
            schema = either[random.Next(either.GetArrayLength())];
        if (depth > 5 || random.Next(12) == 0)
            return Odd(depth);
        if (schema.TryGetProperty("enum", out var words))
            return JsonNode.Parse(words[random.Next(words.GetArrayLength())].GetRawText());
        var types = schema.TryGetProperty("type", out var type) ? type.ToString() : "object";
        if (schema.TryGetProperty("properties", out var fields))
            return new JsonObject(fields.EnumerateObject().Where(_ => random.Next(5) > 0).Select(f => KeyValuePair.Create(f.Name, Value(f.Value, depth + 1))));
        if (schema.TryGetProperty("additionalProperties", out var more) && more.ValueKind is JsonValueKind.Object)
            return new JsonObject(new[] { KeyValuePair.Create("supply", Value(more, depth + 1)) });
        if (schema.TryGetProperty("items", out var items))
            return new JsonArray([.. Enumerable.Range(0, random.Next(4)).Select(_ => Value(items, depth + 1))]);
        return types.Contains("boolean", StringComparison.Ordinal) ? random.Next(2) == 0
            : types.Contains("number", StringComparison.Ordinal) || types.Contains("integer", StringComparison.Ordinal) ? Number()
            : Words[random.Next(Words.Length)];
    }

    private JsonNode Number() => random.Next(6) switch { 0 => -1, 1 => 0, 2 => 1e308, 3 => 0.5, 4 => long.MaxValue, _ => random.Next(100) };

    private JsonNode? Odd(int depth) => random.Next(6) switch
    {
        0 => null,
        1 => new JsonArray(null, 1, "x"),
        2 => new JsonObject { ["a"] = null },
        3 => "NaN",
        4 => 1e308,
        _ => Enumerable.Range(0, 80).Aggregate((JsonNode)depth, (inner, _) => new JsonArray(inner)),
    };
}
