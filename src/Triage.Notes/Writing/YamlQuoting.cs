using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Triage.Notes.Writing;

/// <summary>
/// Puts text in quotes where a YAML reader, of version 1.1 or 1.2, would take it for something else: a truth value, a number,
/// a time in base 60, a date, nothing, a comment, a field or the start of a structure (yaml.org, YAML 1.1 type repository and YAML 1.2.2, 7.3.3).
/// </summary>
internal static partial class YamlQuoting
{
    [GeneratedRegex(@"\A(?:y|n|yes|no|on|off|true|false|null|~|\.nan)\z", RegexOptions.IgnoreCase)]
    private static partial Regex TakenWord { get; }

    [GeneratedRegex(@"\A[-+.]?[0-9]", RegexOptions.None)]
    private static partial Regex NumberLike { get; }

    /// <summary>The text as a value on one line, inside brackets or not.</summary>
    public static string Quoted(string text) => IsPlain(text) ? text : InQuotes(text);

    private static bool IsPlain(string text) =>
        text.Length > 0
        && !char.IsWhiteSpace(text[0]) && !char.IsWhiteSpace(text[^1])
        && !TakenWord.IsMatch(text)
        && !NumberLike.IsMatch(text)
        && !"-?:,[]{}#&*!|>'\"%@`=<~.+".Contains(text[0], StringComparison.Ordinal)
        && !text.Contains(": ", StringComparison.Ordinal) && !text.EndsWith(':') && !text.Contains(" #", StringComparison.Ordinal)
        && text.IndexOfAny([',', '[', ']', '{', '}']) < 0
        && !text.Any(NeedsEscape);

    private static string InQuotes(string text)
    {
        var quoted = new StringBuilder(text.Length + 2).Append('"');
        foreach (var c in text)
        {
            quoted.Append(c switch
            {
                '"' => "\\\"",
                '\\' => "\\\\",
                '\n' => "\\n",
                '\r' => "\\r",
                '\t' => "\\t",
                _ when NeedsEscape(c) => "\\u" + ((int)c).ToString("X4", CultureInfo.InvariantCulture),
                _ => c.ToString(),
            });
        }

        return quoted.Append('"').ToString();
    }

    /// <summary>Characters that YAML does not print, takes for line ends, or that fall away unseen.</summary>
    private static bool NeedsEscape(char c) => char.IsControl(c) || c is '\u2028' or '\u2029' or '\uFEFF' or '\uFFFE' or '\uFFFF';
}
