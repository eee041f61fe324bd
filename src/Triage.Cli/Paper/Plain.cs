namespace Triage.Cli.Paper;

/// <summary>Text of notes and people as a terminal may have it: nothing in it moves the cursor or colours.</summary>
internal static class Plain
{
    /// <summary>Line breaks stay, other control signs go.</summary>
    public static string Text(string text) => string.Concat(text.ReplaceLineEndings("\n").Where(c => c == '\n' || !char.IsControl(c)));

    /// <summary>On one line.</summary>
    public static string Line(string text) => string.Join(' ', Text(text).Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
}
