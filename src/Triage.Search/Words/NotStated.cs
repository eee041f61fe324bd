using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace Triage.Search.Words;

/// <summary>What is asked, hoped, or told of others states nothing of the machine: "do these hum normally?", "hope it won't buzz like my cousin's".</summary>
internal static partial class NotStated
{
    /// <summary>The text with such words blanked out, in its length, and where they stand.</summary>
    public static (string Text, ImmutableArray<Piece> Left) In(string text)
    {
        var letters = text.ToCharArray();
        var left = ImmutableArray.CreateBuilder<Piece>();
        foreach (Match m in Question().Matches(text).Concat(Wish().Matches(text)))
        {
            left.Add(new(m.Value, new(m.Index, m.Length)));
            Array.Fill(letters, ' ', m.Index, m.Length);
        }

        return (new(letters), left.ToImmutable());
    }

    /// <summary>"Will not turn on, can you help?" begins like a question and is none.</summary>
    [GeneratedRegex(@"(?<=^|[.!?\n]\s*)(?:(?:and|but|so|or)\s+)?(?:do|does|did|will|would|can|could|is|are|should|may|might|how(?!\s+come)|what|who|where|which)(?!\s+(?:not|no|nothing|never)\b|n['’]?t\b)\s[^.!?\n]*\?", RegexOptions.IgnoreCase)]
    private static partial Regex Question();

    [GeneratedRegex(@"\b(?:(?:i\s+)?(?:do\s+)?hop(?:e|ing)\b|i\s+wish\b|please\s+god\b|would\s+be\s+(?:nice|good|lovely|great)\b|(?:i\s+was|they|somebody|someone|he|she|grandad|dad|mum|people)\s+(?:told|tells?|says?|said)(?:\s+me)?(?:\s+that)?\s+(?:it|they|these|a|an|the)\s+(?:\w+\s+){0,3}?(?:may|might|could|would)\b|(?:it|this)\s+is\s*n['’]?t\s+that\b|(?:it|this)\s+isnt\s+that\b|my\s+(?:old|last|previous)\s+one\s+(?:had|was|did|used|made)\b)[^.!?;,\n]*", RegexOptions.IgnoreCase)]
    private static partial Regex Wish();
}
