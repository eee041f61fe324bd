
namespace Triage.Notes.Writing;

/// <summary>Writes values as the format page shows them.</summary>
internal static class YamlRenderer
{
    /// <summary>On one line.</summary>
    public static string Flow(YamlValue value) => value switch
    {
        YamlText text => YamlQuoting.Quoted(text.Text),
        YamlLiteral literal => literal.Text,
        YamlList list => $"[{string.Join(", ", list.Items.Select(Flow))}]",
        YamlFields fields => $"{{{string.Join(", ", fields.Fields.Select(Field))}}}",
        _ => throw new ArgumentOutOfRangeException(nameof(value)),
    };

    /// <summary>A field with its lines, each ended by <paramref name="newLine"/>.</summary>
    /// <param name="indent">Spaces before the field's name.</param>
    public static string Lines(string key, YamlValue value, int indent, string newLine) =>
        $"{new string(' ', indent)}{YamlQuoting.Quoted(key)}:{Value(value, indent, newLine)}{newLine}";

    /// <summary>What follows a field's colon: a value on the same line, or the lines of a list or group below it.</summary>
    public static string Value(YamlValue value, int indent, string newLine) =>
        IsBlock(value) ? newLine + Block(value, indent + 2, newLine) : $" {Flow(value)}";

    public static bool IsBlock(YamlValue value) => value is YamlList { Block: true, Items.Length: > 0 } or YamlFields { Block: true, Fields.Length: > 0 };

    private static string Block(YamlValue value, int indent, string newLine)
    {
        var pad = new string(' ', indent);
        return value switch
        {
            YamlList list => string.Join(newLine, list.Items.Select(i => $"{pad}- {Item(i, indent + 2, newLine)}")),
            YamlFields fields => pad + FieldLines(fields, indent, newLine),
            _ => throw new ArgumentOutOfRangeException(nameof(value)),
        };
    }

    private static string Item(YamlValue item, int indent, string newLine) =>
        item is YamlFields { Block: true, Fields.Length: > 0 } fields ? FieldLines(fields, indent, newLine) : Flow(item);

    private static string FieldLines(YamlFields fields, int indent, string newLine) => string.Join(
        newLine + new string(' ', indent),
        fields.Fields.Select(f => $"{YamlQuoting.Quoted(f.Key)}:{Value(f.Value, indent, newLine)}"));

    private static string Field((string Key, YamlValue Value) field) => $"{YamlQuoting.Quoted(field.Key)}: {Flow(field.Value)}";
}
