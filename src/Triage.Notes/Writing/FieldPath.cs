using System.Globalization;
using Triage.Notes.Parsing;

namespace Triage.Notes.Writing;

/// <summary>Where a path of field names and item numbers leads in a note's front matter.</summary>
/// <param name="Node">What is there, or the last thing on the way that is.</param>
/// <param name="Parent">What <paramref name="Node"/> stands in; null for the front matter itself.</param>
/// <param name="Key">Its name or number there.</param>
/// <param name="Missing">The first part of the path that is not there; null when all are.</param>
/// <param name="Depth">Parts of the path that lead to <paramref name="Node"/>.</param>
/// <param name="ThroughAlias"><paramref name="Node"/> is an alias on the way: what lies behind it stands elsewhere too.</param>
internal sealed record FieldPath(YamlNode Node, YamlNode? Parent, string? Key, string? Missing, int Depth, bool ThroughAlias)
{
    public static FieldPath Follow(NoteText text, ReadOnlySpan<string> path)
    {
        if (!text.Editable || text.Fields is null)
        {
            throw new InvalidOperationException(NoteProblems.NotEditable);
        }

        if (path.IsEmpty)
        {
            throw LeadsNowhere(path);
        }

        YamlNode node = text.Fields;
        YamlNode? parent = null;
        for (var depth = 0; depth < path.Length; depth++)
        {
            var key = depth == 0 ? null : path[depth - 1];
            if (node.IsAlias)
            {
                return new FieldPath(node, parent, key, null, depth, ThroughAlias: true);
            }

            if (Child(node, path[depth]) is not { } child)
            {
                return new FieldPath(node, parent, key, path[depth], depth, ThroughAlias: false);
            }

            (parent, node) = (node, child);
        }

        return new FieldPath(node, parent, path[^1], null, path.Length, ThroughAlias: false);
    }

    /// <summary>A value inside groups that have to be made for it.</summary>
    public static YamlValue Nested(ReadOnlySpan<string> keys, YamlValue value) =>
        keys.IsEmpty ? value : new YamlFields([(keys[0], Nested(keys[1..], value))]);

    /// <summary>A written-out value with one thing in it changed.</summary>
    public static YamlValue Changed(YamlValue whole, ReadOnlySpan<string> path, YamlValue value)
    {
        if (path.IsEmpty)
        {
            return value;
        }

        var key = path[0];
        switch (whole)
        {
            case YamlFields fields:
                var old = fields.Fields.FirstOrDefault(f => f.Key == key).Value;
                var inner = old is null ? Nested(path[1..], value) : Changed(old, path[1..], value);
                return new YamlFields(old is null
                    ? fields.Fields.Add((key, inner))
                    : [.. fields.Fields.Select(f => f.Key == key ? (key, inner) : f)]);
            case YamlList list when Number(key) is { } i && i < list.Items.Length:
                return new YamlList(list.Items.SetItem(i, Changed(list.Items[i], path[1..], value)));
            default:
                throw LeadsNowhere(path);
        }
    }

    public static InvalidOperationException LeadsNowhere(ReadOnlySpan<string> path) =>
        new(NoteProblems.PathLeadsNowhere(string.Join('.', path.ToArray())));

    private static YamlNode? Child(YamlNode node, string key) => node switch
    {
        YamlMapping group => group.Find(key)?.Value,
        YamlSequence list when Number(key) is { } i && i < list.Items.Length => list.Items[i],
        _ => null,
    };

    private static int? Number(string key) =>
        int.TryParse(key, NumberStyles.None, CultureInfo.InvariantCulture, out var i) ? i : null;
}
