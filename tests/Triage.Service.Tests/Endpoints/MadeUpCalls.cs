using System.Text.Json;
using System.Text.Json.Nodes;

namespace Triage.Service.Tests.Endpoints;

/// <summary>Calls that nobody means well, from a seed: an operation of the OpenAPI document with a body that half fits it, or that was damaged on its way.</summary>
internal sealed class MadeUpCalls(JsonElement document, Random random)
{
    public static readonly string[] Ids = ["2026-021", "2026-022", "2026-023", "2026-025", "2026-005", "none", "..%2F..", "%00", "2026-021%0d%0a", "corvane-k-61", new('x', 300)];

    public static readonly string[] Words =
        ["", " ", "C14", "ohms-across-backup", "flat-low", "no sound", "works", "belt", "case", "\u0000\u001b[2J", "12 R", "1e400", "NaN", "-0", "🎹", "../../etc", "a\nb: c", "'\"<script>", new('y', 5000)];

    private const string Json = "application/json";

    private static readonly string[] Whole =
        ["", "null", "[]", "{}", "{", "\"x\"", "7", "1e400", "NaN", "[[[[[[[[", "{\"a\":", "\u0000", "{\"" + new string('k', 4000) + "\":1}", new('[', 20_000), "{\"text\":\"a\",\"text\":null}", "\uFEFF{\"text\":\"a\"}"];

    private static readonly string?[] OddTypes = ["text/plain", "application/x-www-form-urlencoded", "multipart/form-data; boundary=b", "application/json; charset=none", "application/merge-patch+json", null];

    private readonly (string Path, string Method, JsonElement What)[] operations =
    [
        .. document.GetProperty("paths").EnumerateObject()
            .Where(p => p.Name.StartsWith("/api/", StringComparison.Ordinal) && !p.Name.Contains("forecasts", StringComparison.Ordinal) && !p.Name.Contains("share", StringComparison.Ordinal))
            .SelectMany(p => p.Value.EnumerateObject().Where(m => m.Value.ValueKind is JsonValueKind.Object && m.Name is "get" or "post" or "put" or "patch" or "delete").Select(m => (p.Name, m.Name, m.Value))),
    ];

    private IReadOnlyList<(string Path, string Method, JsonElement What)> Writes => field ??= [.. operations.Where(o => o.Method != "get")];

    public SentCall Next()
    {
        // what is only read is dear after each write, and has little to go wrong
        var (path, method, what) = One(random.Next(8) == 0 ? operations : Writes);
        var address = Filled(path) + Query(what);
        return method is "get" or "delete" ? new(method.ToUpperInvariant(), address)
            : new(method.ToUpperInvariant(), address, random.Next(20) == 0 ? One(OddTypes) : Json, Body(what));
    }

    private T One<T>(IReadOnlyList<T> of) => of[random.Next(of.Count)];

    private string Filled(string path)
    {
        while (path.IndexOf('{') is var from and >= 0)
            path = path[..from] + (path[from..].StartsWith("{entry", StringComparison.Ordinal) ? $"{random.Next(-2, 6)}" : One(Ids)) + path[(path.IndexOf('}') + 1)..];
        return path;
    }

    private string Query(JsonElement what) => !what.TryGetProperty("parameters", out var parameters) ? "" : "?" + string.Join('&', parameters.EnumerateArray()
        .Where(p => p.GetProperty("in").GetString() == "query" && random.Next(2) == 0)
        .Select(p => $"{p.GetProperty("name").GetString()}={Uri.EscapeDataString(random.Next(3) == 0 ? $"{random.Next()}" : One(Words))}"));

    private string Body(JsonElement what)
    {
        if (random.Next(6) == 0 || !what.TryGetProperty("requestBody", out var wanted) || !wanted.GetProperty("content").TryGetProperty(Json, out var json))
            return One(Whole);
        var body = Value(json.GetProperty("schema"), 0)?.ToJsonString() ?? "null";
        return random.Next(8) == 0 ? Damaged(body) : body;
    }

    /// <summary>A piece taken out, doubled, or changed for a sign of the grammar.</summary>
    private string Damaged(string body)
    {
        var from = random.Next(body.Length);
        var to = Math.Min(body.Length, from + 1 + random.Next(8));
        return body[..from] + random.Next(3) switch { 0 => "", 1 => body[from..to] + body[from..to], _ => One(["\"", "{", "]", ",", "\\u", "-", "\u0001"]) } + body[to..];
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
            : One(Words);
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
