using System.Text;
using Triage.Notes.Parsing;

namespace Triage.Notes.Writing;

/// <summary>The changes of text that edits are made of. Offsets are those of <see cref="NoteText.Content"/>.</summary>
internal static class TextSplice
{
    /// <summary>The text with a stretch of it replaced, read again.</summary>
    public static NoteText Spliced(this NoteText text, int start, int end, string replacement)
    {
        if (!text.Editable)
        {
            throw new InvalidOperationException(NoteProblems.NotEditable);
        }

        return NoteText.Reread(string.Concat(text.Content.AsSpan(0, start), replacement, text.Content.AsSpan(end)));
    }

    /// <summary>Adds a field below the last one of a group, or behind it inside braces.</summary>
    public static NoteText Add(this NoteText text, YamlMapping group, string key, YamlValue value)
    {
        if (group.Flow)
        {
            var field = YamlRenderer.Flow(new YamlFields([(key, value)]))[1..^1];
            return text.AddInside(group, group.Fields.Length == 0, field);
        }

        var at = ReferenceEquals(group, text.Fields) ? text.FrontMatterEnd : text.NextLine(group.End);
        return text.Spliced(at, at, YamlRenderer.Lines(key, value, group.Fields[0].Key.Column - 1, text.NewLine));
    }

    /// <summary>Adds an item below the last one of a list, or behind it inside brackets.</summary>
    public static NoteText Add(this NoteText text, YamlSequence list, YamlValue item)
    {
        if (list.Flow)
        {
            return text.AddInside(list, list.Items.Length == 0, YamlRenderer.Flow(item));
        }

        var at = text.NextLine(list.End);
        return text.Spliced(at, at, $"{text.IndentOf(text.DashOf(list.Items[^1]))}- {YamlRenderer.Flow(item)}{text.NewLine}");
    }

    /// <summary>Puts an item before another of its list.</summary>
    public static NoteText Insert(this NoteText text, YamlSequence list, int at, YamlValue item)
    {
        var (before, value) = (list.Items[at], YamlRenderer.Flow(item));
        if (list.Flow)
        {
            return text.Spliced(before.Start, before.Start, $"{value}, ");
        }

        var dash = text.DashOf(before);
        return text.Spliced(dash, dash, $"- {value}{text.NewLine}{text.IndentOf(dash)}");
    }

    /// <summary>Writes a value in the place of another.</summary>
    public static NoteText Replace(this NoteText text, FieldPath target, YamlValue value)
    {
        var node = target.Node;
        if (target.Parent is not YamlMapping { Flow: false } group)
        {
            return text.Spliced(text.AfterProperties(node.Start), node.End, YamlRenderer.Flow(value));
        }

        var key = group.Find(target.Key!)!.Key;
        var behind = text.AfterProperties(text.AfterColon(key));
        var comment = IsBelow(node) ? text.Content[behind..text.LineEnd(behind)] : text.Content[node.End..text.LineEnd(node.End)];
        var end = text.LineEnd(Math.Max(node.End, behind));
        var from = text.TrimmedEnd(behind);
        return YamlRenderer.IsBlock(value)
            ? text.Spliced(from, end, Comment(comment) + YamlRenderer.Value(value, key.Column - 1, text.NewLine))
            : text.Spliced(from, end, $" {YamlRenderer.Flow(value)}{Comment(comment)}");

        bool IsBelow(YamlNode old) => text.IsBelow(old, behind);
    }

    public static NoteText RemoveField(this NoteText text, YamlMapping group, YamlField field)
    {
        var at = group.Fields.IndexOf(field);
        var end = Math.Max(field.Key.End, field.Value.End);
        var next = at + 1 < group.Fields.Length ? group.Fields[at + 1].Key.Start : (int?)null;
        if (group.Flow)
        {
            return text.RemoveInside(field.Key.Start, end, next, at > 0 ? Math.Max(group.Fields[at - 1].Key.End, group.Fields[at - 1].Value.End) : null);
        }

        if (text.StartsItsLine(field.Key.Start))
        {
            return text.RemoveLines(field.Key.Start, end);
        }

        return next is { } following ? text.Spliced(field.Key.Start, following, "") : text.Spliced(field.Key.Start, end, "{}");
    }

    public static NoteText RemoveItem(this NoteText text, YamlSequence list, int at)
    {
        var item = list.Items[at];
        var next = at + 1 < list.Items.Length ? list.Items[at + 1].Start : (int?)null;
        if (list.Flow)
        {
            return text.RemoveInside(item.Start, item.End, next, at > 0 ? list.Items[at - 1].End : null);
        }

        var dash = text.DashOf(item);
        return text.StartsItsLine(dash)
            ? text.RemoveLines(dash, item.End)
            : text.Spliced(dash, next is null ? item.End : text.DashOf(list.Items[at + 1]), next is null ? "[]" : "");
    }

    private static NoteText RemoveInside(this NoteText text, int start, int end, int? next, int? previousEnd) => (next, previousEnd) switch
    {
        ({ } following, _) => text.Spliced(start, following, ""),
        (null, { } before) => text.Spliced(before, end, ""),
        _ => text.Spliced(start, end, ""),
    };

    private static NoteText RemoveLines(this NoteText text, int start, int end) =>
        text.Spliced(text.LineStart(start), text.NextLine(end), "");

    private static NoteText AddInside(this NoteText text, YamlNode whole, bool empty, string added)
    {
        var lastEnd = whole switch
        {
            YamlMapping { Fields: [.., var last] } => Math.Max(last.Key.End, last.Value.End),
            YamlSequence { Items: [.., var last] } => last.End,
            _ => whole.End - 1,
        };
        return text.Spliced(lastEnd, lastEnd, empty ? added : $", {added}");
    }

    private static string Comment(string restOfLine) =>
        restOfLine.TrimStart().StartsWith('#') ? (char.IsWhiteSpace(restOfLine[0]) ? restOfLine : $" {restOfLine}") : "";
}
