using System.Collections.Immutable;
using Triage.Notes.Parsing;

namespace Triage.Notes.Writing;

/// <summary>
/// Changes a note's file field by field; every line that does not belong to the field stays as it is, byte for byte. Each method gives
/// the text after the change. A path names fields from the outside in; inside a list it names an item by its number from 0.
/// </summary>
public static class FrontMatterEdit
{
    /// <summary>Writes a value; a field that is not there is added below the others of its group.</summary>
    /// <exception cref="InvalidOperationException">The note cannot be edited (<see cref="NoteText.Editable"/>), or the path leads nowhere.</exception>
    public static NoteText Set(this NoteText text, ReadOnlySpan<string> path, YamlValue value)
    {
        var target = FieldPath.Follow(text, path);
        if (target.ThroughAlias)
        {
            return Set(text, path[..target.Depth], FieldPath.Changed(YamlValue.Of(target.Node), path[target.Depth..], value));
        }

        return (target.Node, target.Missing) switch
        {
            (YamlMapping group, { } key) => text.Add(group, key, FieldPath.Nested(path[(target.Depth + 1)..], value)),
            (YamlScalar { IsNull: true }, { }) => Set(text, path[..target.Depth], FieldPath.Nested(path[target.Depth..], value)),
            (_, { }) => throw FieldPath.LeadsNowhere(path),
            _ => text.Replace(target, value),
        };
    }

    /// <summary>
    /// Adds an item to a list: below the last one where each has its line, inside the brackets where it has them. A list that is not there
    /// is added at the end of the front matter.
    /// </summary>
    /// <exception cref="InvalidOperationException">The note cannot be edited, or the path leads nowhere.</exception>
    public static NoteText Append(this NoteText text, ReadOnlySpan<string> path, YamlValue item)
    {
        var target = FieldPath.Follow(text, path);
        return target.Missing is null && !target.ThroughAlias && target.Node is YamlSequence { Items.Length: > 0 } list
            ? text.Add(list, item)
            : Set(text, path, new YamlList([.. Existing(target), item], Block: true));
    }

    /// <summary>Puts an item into a list, before the one that has its number now; behind the last when none has.</summary>
    /// <exception cref="InvalidOperationException">The note cannot be edited, or the path leads nowhere.</exception>
    public static NoteText Insert(this NoteText text, ReadOnlySpan<string> path, int at, YamlValue item)
    {
        var target = FieldPath.Follow(text, path);
        return target is { Missing: null, ThroughAlias: false, Node: YamlSequence list } && at >= 0 && at < list.Items.Length
            ? text.Insert(list, at, item)
            : text.Append(path, item);
    }

    /// <summary>Takes a field, or an item of a list, out with its lines. One that is not there changes nothing.</summary>
    /// <exception cref="InvalidOperationException">The note cannot be edited, or the field stands behind an alias.</exception>
    public static NoteText Remove(this NoteText text, ReadOnlySpan<string> path)
    {
        var target = FieldPath.Follow(text, path);
        return target switch
        {
            { ThroughAlias: true } => throw FieldPath.LeadsNowhere(path),
            { Missing: not null } => text,
            { Parent: YamlMapping group } => text.RemoveField(group, group.Fields.Single(f => f.Key.Text == target.Key)),
            { Parent: YamlSequence list } => text.RemoveItem(list, list.Items.IndexOf(target.Node)),
            _ => throw FieldPath.LeadsNowhere(path),
        };
    }

    /// <summary>Writes the Markdown below the front matter, with the file's own line ends.</summary>
    /// <exception cref="InvalidOperationException">The note cannot be edited.</exception>
    public static NoteText SetBody(this NoteText text, string body)
    {
        var lines = body.ReplaceLineEndings("\n").Replace("\n", text.NewLine, StringComparison.Ordinal);
        var head = text.Content[..text.BodyStart];
        return text.Spliced(text.BodyStart, text.Content.Length, head.EndsWith('\n') || lines.Length == 0 ? lines : text.NewLine + lines);
    }

    private static ImmutableArray<YamlValue> Existing(FieldPath target) => (target.Missing, target.Node) switch
    {
        ({ }, _) or (_, YamlScalar { IsNull: true }) => [],
        (_, YamlSequence list) => [.. list.Items.Select(YamlValue.Of)],
        (_, var one) => [YamlValue.Of(one)],
    };
}
