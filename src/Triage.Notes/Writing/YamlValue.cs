using System.Collections.Immutable;
using System.Globalization;
using Triage.Notes.Parsing;

namespace Triage.Notes.Writing;

/// <summary>A value to be written into front matter.</summary>
public abstract record YamlValue
{
    /// <summary>Words; quoted where YAML would read them as something else.</summary>
    public static YamlValue Of(string text) => new YamlText(text);

    public static YamlValue Of(double number) => new YamlLiteral(number.ToString("R", CultureInfo.InvariantCulture));

    public static YamlValue Of(bool flag) => new YamlLiteral(flag ? "true" : "false");

    public static YamlValue Of(DateTimeOffset date) => new YamlLiteral(NoteDate.Write(date));

    /// <summary>A list in brackets on one line.</summary>
    public static YamlValue Of(IEnumerable<string> texts) => new YamlList([.. texts.Select(Of)]);

    /// <summary>What stands in a file already, aliases written out.</summary>
    internal static YamlValue Of(YamlNode node) => node switch
    {
        YamlScalar { Quoted: false } plain => new YamlLiteral(plain.Text),
        YamlScalar quoted => new YamlText(quoted.Text),
        YamlSequence sequence => new YamlList([.. sequence.Items.Select(Of)]),
        YamlMapping mapping => new YamlFields([.. mapping.Fields.Select(f => (f.Key.Text, Of(f.Value)))]),
        _ => throw new ArgumentOutOfRangeException(nameof(node)),
    };
}

/// <summary>Words.</summary>
public sealed record YamlText(string Text) : YamlValue;

/// <summary>A number, a date, true or false: written as it is.</summary>
public sealed record YamlLiteral(string Text) : YamlValue;

/// <summary>A list: in brackets, or in block form one item a line.</summary>
public sealed record YamlList(ImmutableArray<YamlValue> Items, bool Block = false) : YamlValue;

/// <summary>Fields: in braces, or in block form one a line.</summary>
public sealed record YamlFields(ImmutableArray<(string Key, YamlValue Value)> Fields, bool Block = false) : YamlValue;
