using System.Text;

namespace Triage.Notes.Parsing;

/// <summary>A note's file as it is: its bytes, the text in them, and where its fields stand.</summary>
public sealed record NoteText
{
    /// <summary>The file, untouched.</summary>
    public ReadOnlyMemory<byte> Bytes { get; init; }

    /// <summary>The text with a byte-order mark if it had one; of a file that is not UTF-8, its bytes read as Latin-1.</summary>
    public string Content { get; init; } = "";

    /// <summary>Offset in <see cref="Content"/> of the first line of front matter; -1 without front matter.</summary>
    public int FrontMatterStart { get; init; } = -1;

    /// <summary>Offset of the --- that ends it.</summary>
    public int FrontMatterEnd { get; init; } = -1;

    /// <summary>Offset of what stands below it.</summary>
    public int BodyStart { get; init; }

    /// <summary>Fields of the front matter; null when there are none or they cannot be read.</summary>
    public YamlMapping? Fields { get; init; }

    /// <summary>The program may change it: it was read without an error in its form, and is of this format.</summary>
    public bool Editable { get; init; }

    /// <summary>Markdown below the front matter; the whole text when there is none.</summary>
    public string Body => Content[BodyStart..];

    /// <summary>Line end of the file's first line.</summary>
    public string NewLine
    {
        get
        {
            var end = Content.IndexOf('\n', StringComparison.Ordinal);
            return end > 0 && Content[end - 1] == '\r' ? "\r\n" : "\n";
        }
    }

    /// <summary>Line of the file, from 1, on which an offset lies.</summary>
    public int LineAt(int offset) => 1 + Content.AsSpan(0, offset).Count('\n');

    /// <summary>The text after an edit.</summary>
    /// <exception cref="InvalidOperationException">The edit would leave it unreadable, as when an alias loses what it repeats.</exception>
    internal static NoteText Reread(string content)
    {
        var text = FrontMatterBounds.Find(Of(content)) ?? throw new InvalidOperationException(NoteProblems.NotEditable);
        try
        {
            var fields = YamlTree.Read(content, text.FrontMatterStart, text.FrontMatterEnd, 2, YamlLimits.Default) as YamlMapping;
            return text with { Fields = fields, Editable = fields is not null };
        }
        catch (NoteSyntaxException e)
        {
            throw new InvalidOperationException($"{e.Line}:{e.Column}: {e.Text.What} {e.Text.Instead}", e);
        }
    }

    internal static NoteText Of(string content) => new() { Content = content, Bytes = Encoding.UTF8.GetBytes(content) };
}
