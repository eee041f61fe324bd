namespace Triage.Notes.Parsing;

/// <summary>Finds the front matter of a text: from the line after the first --- to the next line of ---.</summary>
internal static class FrontMatterBounds
{
    public const char ByteOrderMark = '\uFEFF';

    /// <summary>Whether the text starts as a note does.</summary>
    public static bool Opens(string content) => IsFence(content, FirstLine(content));

    /// <summary>The text with the offsets of its front matter; null when nothing ends it.</summary>
    public static NoteText? Find(NoteText text)
    {
        var content = text.Content;
        var start = NextLine(content, FirstLine(content));
        for (var line = start; line < content.Length; line = NextLine(content, line))
        {
            if (IsFence(content, line))
            {
                return text with { FrontMatterStart = start, FrontMatterEnd = line, BodyStart = NextLine(content, line) };
            }
        }

        return null;
    }

    private static int FirstLine(string content) => content.StartsWith(ByteOrderMark) ? 1 : 0;

    private static int NextLine(string content, int from)
    {
        var end = content.IndexOf('\n', from);
        return end < 0 ? content.Length : end + 1;
    }

    private static bool IsFence(string content, int line) =>
        string.CompareOrdinal(content, line, "---", 0, 3) == 0
        && content.AsSpan((line + 3)..NextLine(content, line)).IsWhiteSpace();
}
