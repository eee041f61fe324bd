using System.Collections.Immutable;
using System.Text.Json;

namespace Triage.Service.Tests.Endpoints;

/// <summary>What a program may rely on in the API document, one line each: operations, what they take and give, fields and their types, values.</summary>
internal static class ApiPromise
{
    public static ImmutableArray<string> Lines(JsonElement document) =>
        [.. Operations(document.GetProperty("paths")).Concat(Schemas(document)).Order(StringComparer.Ordinal)];

    private static IEnumerable<string> Operations(JsonElement paths) =>
        from path in paths.EnumerateObject()
        from operation in path.Value.EnumerateObject()
        select $"{operation.Name.ToUpperInvariant()} {path.Name}{Parameters(operation.Value)}{Takes(operation.Value)} gives {Gives(operation.Value)}";

    private static string Parameters(JsonElement operation) =>
        operation.TryGetProperty("parameters", out var parameters)
            ? string.Concat(parameters.EnumerateArray().Where(p => Text(p, "in") != "path").Select(p => $" ?{Text(p, "name")}"))
            : "";

    private static string Takes(JsonElement operation) =>
        operation.TryGetProperty("requestBody", out var body) ? $" takes {Contents(body)}" : "";

    private static string Gives(JsonElement operation) =>
        string.Join(" | ", operation.GetProperty("responses").EnumerateObject().Where(r => r.Name[0] == '2').Select(r => Contents(r.Value)).DefaultIfEmpty("nothing"));

    private static string Contents(JsonElement holder) =>
        holder.TryGetProperty("content", out var content)
            ? string.Join(" or ", content.EnumerateObject().Select(c => c.Value.TryGetProperty("schema", out var schema) ? $"{c.Name} {Type(schema)}" : c.Name))
            : "nothing";

    private static IEnumerable<string> Schemas(JsonElement document)
    {
        var taken = document.GetProperty("paths").EnumerateObject().SelectMany(p => p.Value.EnumerateObject())
            .Select(o => Takes(o.Value)).Select(t => t.Split(' ')[^1]).ToHashSet();
        foreach (var schema in document.GetProperty("components").GetProperty("schemas").EnumerateObject())
        {
            foreach (var value in Values(schema.Value))
                yield return $"{schema.Name} may be {value}";
            if (taken.Contains(schema.Name) && schema.Value.TryGetProperty("required", out var required))
                yield return $"{schema.Name} needs {string.Join(", ", required.EnumerateArray().Select(r => r.GetString()).Order(StringComparer.Ordinal))}";
            if (schema.Value.TryGetProperty("properties", out var properties))
            {
                foreach (var property in properties.EnumerateObject())
                    yield return $"{schema.Name}.{property.Name}: {Type(property.Value)}";
            }
        }
    }

    private static IEnumerable<string> Values(JsonElement schema) =>
        schema.TryGetProperty("enum", out var values) ? values.EnumerateArray().Where(v => v.ValueKind == JsonValueKind.String).Select(v => v.GetString()!) : [];

    private static string Type(JsonElement schema)
    {
        if (schema.TryGetProperty("$ref", out var reference))
            return reference.GetString()!.Split('/')[^1];
        if (schema.TryGetProperty("oneOf", out var either))
            return string.Join("|", either.EnumerateArray().Select(Type));
        if (schema.TryGetProperty("items", out var items))
            return $"[{Type(items)}]";
        if (!schema.TryGetProperty("type", out var type))
            return "anything";
        return type.ValueKind == JsonValueKind.Array ? string.Join("|", type.EnumerateArray().Select(t => t.GetString())) : type.GetString()!;
    }

    private static string? Text(JsonElement from, string name) => from.GetProperty(name).GetString();
}
