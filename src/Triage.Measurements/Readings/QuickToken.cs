using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace Triage.Measurements.Readings;

/// <summary>A word of a quick line, without the punctuation around it.</summary>
/// <param name="EndsClause">A comma, semicolon or full stop follows: no phrase reaches across.</param>
internal readonly partial record struct QuickToken(string Word, TextSpan Span, bool EndsClause)
{
    [GeneratedRegex(@"\S+")]
    private static partial Regex Runs { get; }

    public static ImmutableArray<QuickToken> Split(string text) => [.. Runs.Matches(text).Select(m => Trim(m.Value, m.Index)).Where(t => t.Word.Length > 0)];

    private static QuickToken Trim(string raw, int at)
    {
        var lead = raw.Length - raw.TrimStart('(', '"', '\'').Length;
        // "1." is what an older meter shows for over range; "1," ends a clause
        var word = raw is "1." ? raw : raw[lead..].TrimEnd(',', ';', '.', '!', '?', ':', ')', '"');
        return new QuickToken(word, new TextSpan(at + lead, word.Length), word.Length + lead < raw.Length);
    }
}
