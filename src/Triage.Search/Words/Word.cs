namespace Triage.Search.Words;

/// <summary>A word of a complaint, or a sign that parts it.</summary>
/// <param name="Text">Lower case.</param>
/// <param name="Stem">As phrasings have it.</param>
internal sealed record Word(string Text, string Stem, WordRole Role, TextSpan Span)
{
    /// <summary>Part of the text between two breaks, counted through the whole text.</summary>
    public int Clause { get; init; }

    /// <summary>The spelling was corrected.</summary>
    public bool Corrected { get; init; }

    /// <summary>Belongs to a circumstance ("when warm"); no gap between the words of a phrasing.</summary>
    public bool Aside { get; init; }

    public bool IsBreak => Role is WordRole.And or WordRole.Or or WordRole.But or WordRole.Comma;

    public bool IsNegation => Role is WordRole.No or WordRole.Not;
}

internal enum WordRole
{
    Content,

    /// <summary>Says nothing by itself.</summary>
    Function,

    /// <summary>"comes", "loud": counts in a phrasing that has hardly another word, is no gap in a longer one.</summary>
    Light,

    /// <summary>Denies what follows it: no, nothing, neither, without.</summary>
    No,

    /// <summary>Denies the clause: not, never.</summary>
    Not,

    And,
    Or,
    But,
    Comma,
}
