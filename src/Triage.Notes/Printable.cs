namespace Triage.Notes;

/// <summary>Text of people and programs as a terminal or a log may have it: nothing in it moves the cursor, colours, or turns the direction of reading.</summary>
public static class Printable
{
    /// <summary>Line breaks and tabs stay, other control signs go.</summary>
    public static string Text(string text) => string.Concat(text.ReplaceLineEndings("\n").Where(c => c is '\n' or '\t' || !(char.IsControl(c) || Turns(c))));

    /// <summary>On one line.</summary>
    public static string Line(string text) => string.Join(' ', Text(text).Split([' ', '\n', '\t'], StringSplitOptions.RemoveEmptyEntries));

    /// <summary>Embeddings, overrides and isolates (Unicode Standard Annex 9, 2.1 to 2.5): with them text reads otherwise than it is.</summary>
    private static bool Turns(char c) => c is (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069');
}
