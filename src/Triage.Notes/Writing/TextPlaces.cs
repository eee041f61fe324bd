using Triage.Notes.Parsing;

namespace Triage.Notes.Writing;

/// <summary>Finds places around a value: its line, its dash, what follows its field's colon.</summary>
internal static class TextPlaces
{
    /// <summary>Offset of the first character of a line.</summary>
    public static int LineStart(this NoteText text, int offset) =>
        offset == 0 ? 0 : text.Content.LastIndexOf('\n', offset - 1) + 1;

    /// <summary>Offset of a line's end, before its line break.</summary>
    public static int LineEnd(this NoteText text, int offset)
    {
        var end = text.Content.IndexOf('\n', offset);
        end = end < 0 ? text.Content.Length : end;
        return end > offset && text.Content[end - 1] == '\r' ? end - 1 : end;
    }

    /// <summary>Offset of the line below.</summary>
    public static int NextLine(this NoteText text, int offset) => text.Content.IndexOf('\n', offset) + 1;

    /// <summary>Whether nothing but spaces stands before it on its line.</summary>
    public static bool StartsItsLine(this NoteText text, int offset) =>
        text.Content.AsSpan()[text.LineStart(offset)..offset].IsWhiteSpace();

    /// <summary>The spaces before it, as many as its column.</summary>
    public static string IndentOf(this NoteText text, int offset) => new(' ', offset - text.LineStart(offset));

    /// <summary>Offset of the hyphen before an item of a list; white space and comments may lie between.</summary>
    public static int DashOf(this NoteText text, YamlNode item)
    {
        var at = item.Start;
        while (true)
        {
            at = text.Content.AsSpan(0, at).TrimEnd().Length;
            if (text.Content[at - 1] == '-')
            {
                return at - 1;
            }

            at = text.LineStart(at) + text.Content[text.LineStart(at)..at].IndexOf('#', StringComparison.Ordinal);
        }
    }

    /// <summary>Offset behind the colon of a field.</summary>
    public static int AfterColon(this NoteText text, YamlScalar key) => text.Content.IndexOf(':', key.End) + 1;

    /// <summary>Offset behind the anchor and tag that stand there, if any, and the spaces after them.</summary>
    public static int AfterProperties(this NoteText text, int offset)
    {
        var at = text.SkipSpaces(offset);
        while (at < text.Content.Length && text.Content[at] is '&' or '!')
        {
            while (at < text.Content.Length && !char.IsWhiteSpace(text.Content[at]))
            {
                at++;
            }

            at = text.SkipSpaces(at);
        }

        return at;
    }

    /// <summary>Offset behind the last character that is no space, at or before it on its line.</summary>
    public static int TrimmedEnd(this NoteText text, int offset)
    {
        while (offset > 0 && text.Content[offset - 1] is ' ' or '\t')
        {
            offset--;
        }

        return offset;
    }

    /// <summary>Whether a value stands on lines below its field's name.</summary>
    public static bool IsBelow(this NoteText text, YamlNode value, int behindColon) =>
        text.LineEnd(behindColon) < value.End && text.IsAtLineEndOrComment(behindColon);

    private static bool IsAtLineEndOrComment(this NoteText text, int offset) =>
        offset >= text.Content.Length || text.Content[offset] is '\r' or '\n' or '#';

    private static int SkipSpaces(this NoteText text, int offset)
    {
        while (offset < text.Content.Length && text.Content[offset] is ' ' or '\t')
        {
            offset++;
        }

        return offset;
    }
}
