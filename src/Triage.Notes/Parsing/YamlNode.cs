using System.Collections.Immutable;

namespace Triage.Notes.Parsing;

/// <summary>A piece of front matter and where it stands in the file.</summary>
public abstract record YamlNode
{
    /// <summary>Offset of its first character in <see cref="NoteText.Content"/>; an anchor or tag belongs to it.</summary>
    public required int Start { get; init; }

    /// <summary>Offset after its last character; what is only white space or comment below it does not belong to it.</summary>
    public required int End { get; init; }

    /// <summary>From 1, in the file.</summary>
    public required int Line { get; init; }

    /// <summary>From 1.</summary>
    public required int Column { get; init; }

    /// <summary>Nodes in it with aliases written out, itself included.</summary>
    public int Size { get; init; } = 1;

    /// <summary>Stands elsewhere; here is only its alias.</summary>
    public bool IsAlias { get; init; }
}

/// <summary>A single value, as text; what it means is for the field to say.</summary>
public sealed record YamlScalar : YamlNode
{
    public required string Text { get; init; }

    /// <summary>In quotes, or a block of text.</summary>
    public required bool Quoted { get; init; }

    /// <summary>Nothing there: an empty value, <c>~</c> or <c>null</c>.</summary>
    public bool IsNull => !Quoted && Text is "" or "~" or "null";
}

/// <summary>A list.</summary>
public sealed record YamlSequence : YamlNode
{
    public required ImmutableArray<YamlNode> Items { get; init; }

    /// <summary>In brackets.</summary>
    public required bool Flow { get; init; }
}

/// <summary>Fields with their values, in the order of the file.</summary>
public sealed record YamlMapping : YamlNode
{
    public required ImmutableArray<YamlField> Fields { get; init; }

    /// <summary>In braces.</summary>
    public required bool Flow { get; init; }

    public YamlField? Find(string key) => Fields.FirstOrDefault(f => f.Key.Text == key);
}

public sealed record YamlField(YamlScalar Key, YamlNode Value);
