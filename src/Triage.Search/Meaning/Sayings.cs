using System.Text.RegularExpressions;

namespace Triage.Search.Meaning;

/// <summary>Cuts a complaint into what can mean something by itself: each clause, and each whole sentence.</summary>
internal static partial class Sayings
{
    /// <summary>Spans of at least two words, in the order of the text.</summary>
    public static IEnumerable<TextSpan> In(string text) =>
        Sentence().Matches(text).SelectMany(sentence => Clauses(sentence).Append(new(sentence.Index, sentence.Length)))
            .Select(span => Trimmed(text, span)).Where(span => WordsIn(span.Of(text)) > 1).Distinct();

    public static int WordsIn(string text) => Word().Count(text);

    private static IEnumerable<TextSpan> Clauses(Match sentence)
    {
        var from = 0;
        foreach (Match join in Join().Matches(sentence.Value))
        {
            yield return new(sentence.Index + from, join.Index - from);
            from = join.Index + join.Length;
        }
    }

    private static TextSpan Trimmed(string text, TextSpan span)
    {
        var said = span.Of(text);
        var start = said.Length - said.TrimStart().Length;
        return new(span.Start + start, said.Trim().Length);
    }

    [GeneratedRegex(@"[^.!?;\n]+(?:[.](?=\S)[^.!?;\n]*)*")]
    private static partial Regex Sentence();

    [GeneratedRegex(@"\s*(?:[,()—–]|\s-\s|\bbut\b|\band\b|\bthen\b|\bso\b|\bor\b|\bthough\b|\balthough\b|\bwhile\b|\bbecause\b)\s*|$")]
    private static partial Regex Join();

    [GeneratedRegex(@"\w+")]
    private static partial Regex Word();
}
