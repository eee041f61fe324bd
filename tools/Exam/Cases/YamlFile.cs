using System.Globalization;
using YamlDotNet.Core;
using YamlDotNet.RepresentationModel;

namespace Triage.Tools.Exam.Cases;

/// <summary>Reads mappings of a YAML file; what does not fit is refused with file and line.</summary>
internal sealed class YamlFile(string name, YamlMappingNode root)
{
    public YamlMappingNode Root => root;

    /// <exception cref="InvalidDataException">No YAML, or no mapping.</exception>
    public static YamlFile Read(string path)
    {
        try
        {
            using var text = File.OpenText(path);
            var stream = new YamlStream();
            stream.Load(text);
            return new(path, stream.Documents is [{ RootNode: YamlMappingNode mapping }] ? mapping : throw new InvalidDataException($"{path}: this is no mapping of fields. Write “id: …”, “class: …” and so on."));
        }
        catch (YamlException e)
        {
            throw new InvalidDataException($"{path}:{e.Start.Line}: {e.Message}", e);
        }
    }

    public InvalidDataException Wrong(YamlNode node, string what) => new($"{name}:{node.Start.Line}: {what}");

    public static YamlNode? Find(YamlNode? mapping, string field) =>
        mapping is YamlMappingNode m && m.Children.TryGetValue(new YamlScalarNode(field), out var node) && node is not YamlScalarNode { Value: null or "" or "null" or "~" } ? node : null;

    public string? Text(YamlNode? mapping, string field) => Find(mapping, field) switch
    {
        null => null,
        YamlScalarNode scalar => scalar.Value,
        var other => throw Wrong(other, $"“{field}” is one text here, no list."),
    };

    public double? Number(YamlNode? mapping, string field) =>
        Text(mapping, field) is not { } text ? null
        : double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number
        : throw Wrong(Find(mapping, field)!, $"“{field}: {text}” is no number.");

    public static IEnumerable<YamlNode> Items(YamlNode? mapping, string field) => Find(mapping, field) switch
    {
        null => [],
        YamlSequenceNode list => list.Children,
        var one => [one],
    };

    public IEnumerable<string> Texts(YamlNode? mapping, string field) => Items(mapping, field).Select(n => n is YamlScalarNode { Value: { } text } ? text : throw Wrong(n, $"“{field}” holds texts only."));

    public IEnumerable<(string Key, YamlNode Value)> Fields(YamlNode? mapping, string field) => Find(mapping, field) switch
    {
        null => [],
        YamlMappingNode fields => fields.Children.Select(c => (((YamlScalarNode)c.Key).Value ?? "", c.Value)),
        var other => throw Wrong(other, $"“{field}” is a mapping: one “name: value” per line."),
    };
}
