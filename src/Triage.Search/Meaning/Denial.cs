using System.Text.RegularExpressions;

namespace Triage.Search.Meaning;

/// <summary>Whether words deny something; the sentence model hardly hears it.</summary>
internal static partial class Denial
{
    public static bool In(string text) => Denying().IsMatch(text);

    [GeneratedRegex(@"\b(no|not|never|none|nothing|without|neither|nor|won'?t|can'?t|cannot|isn'?t|aren'?t|doesn'?t|don'?t|didn'?t|hasn'?t|wouldn'?t|couldn'?t|stopped|refuses|fails|dead|barely|hardly|only)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Denying();
}
