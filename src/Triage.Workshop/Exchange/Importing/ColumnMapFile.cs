using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.RegularExpressions;

namespace Triage.Workshop.Exchange.Importing;

/// <summary>Reads a column map. What is wrong is said with line and position.</summary>
public static partial class ColumnMapFile
{
    private static readonly string[] Needed = ["id", "class", "closed"];

    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.KebabCaseLower,
        ReadCommentHandling = JsonCommentHandling.Skip,
        AllowTrailingCommas = true,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        RespectNullableAnnotations = true,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false) },
    };

    public static ColumnMapReading Read(string file)
    {
        try
        {
            return Parse(Path.GetFileName(file), File.ReadAllBytes(file));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new(null, ImportTexts.CannotRead("column map", file, e));
        }
    }

    /// <param name="name">Name of the file, for messages.</param>
    internal static ColumnMapReading Parse(string name, byte[] json)
    {
        var text = json.AsSpan().StartsWith("\uFEFF"u8) ? json[3..] : json;
        try
        {
            var map = Missing(text) is { } missing ? throw new JsonException(ImportTexts.SettingMissing(missing), "", 0, 0) : JsonSerializer.Deserialize<ColumnMap>(text, Options)!;
            return ColumnMapCheck.FirstFault(map) is { } fault
                ? new(null, Wrong(name, JsonPlaces.Of(text, fault.At), fault.What))
                : new(map, null);
        }
        catch (JsonException e)
        {
            return new(null, Wrong(name, ((e.LineNumber ?? 0) + 1, (e.BytePositionInLine ?? 0) + 1), Plain(e)));
        }
    }

    private static string? Missing(byte[] json)
    {
        using var document = JsonDocument.Parse(json, new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });
        return document.RootElement.ValueKind != JsonValueKind.Object ? "id" : Needed.FirstOrDefault(n => !document.RootElement.TryGetProperty(n, out _));
    }

    /// <summary>The reader's message without its type names.</summary>
    private static string Plain(JsonException e) =>
        Unmapped().Match(e.Message) is { Success: true } unmapped ? ImportTexts.NoSuchSetting(unmapped.Groups[1].Value)
        : e.Message.Contains("could not be converted", StringComparison.Ordinal) || e.Message.Contains("System.", StringComparison.Ordinal) ? ImportTexts.WrongKindOfValue(e.Path ?? "$")
        : Tail().Replace(e.Message, "");

    private static Refusal Wrong(string name, (long Line, long Column) at, string what) =>
        new(RefusalKind.NotUnderstood, FormattableString.Invariant($"{name}, line {at.Line}, position {at.Column}: {what}"), "Nothing was brought in. Mend the column map and try again.");

    [GeneratedRegex("property '([^']+)' could not be mapped")]
    private static partial Regex Unmapped();

    [GeneratedRegex(@"\s*(Path: .*)?\|? ?LineNumber: .*$")]
    private static partial Regex Tail();
}

/// <summary>A column map, or why there is none.</summary>
public sealed record ColumnMapReading(ColumnMap? Map, Refusal? Refused);
