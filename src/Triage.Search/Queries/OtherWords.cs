using System.Collections.Immutable;
using Triage.Search.Analysis;

namespace Triage.Search.Queries;

/// <summary>What a misspelt or unfinished word of a question may stand for.</summary>
/// <param name="Weight">Beside the word as it was typed.</param>
/// <param name="Words">Terms of each word; none of them empty.</param>
internal sealed record OtherWords(float Weight, ImmutableArray<List<Token>> Words)
{
    // set by hand on the odd half of the judged questions
    private const float Corrected = 1f;
    private const float Completed = 0.5f;
    private const int MostCompletions = 8;

    /// <summary>For each word of a question.</summary>
    public static IEnumerable<OtherWords> Of(IEnumerable<List<Token>> words, string text, bool unfinished, Asking asking) =>
        words.Select(w => unfinished && w.Max(t => t.End) == text.Length && Completions(Written(w, text), asking) is { Words.IsEmpty: false } longer
            ? longer
            : new(Corrected, Terms(asking.Parts.Spelling && asking.Words.Correction(Written(w, text)) is { } right ? [right] : [], asking)));

    /// <summary>The question with misspelt words put right; null when there are none.</summary>
    public static string? PutRight(IEnumerable<List<Token>> words, string text, Asking asking)
    {
        var right = text;
        foreach (var word in words.Reverse())
        {
            if (asking.Words.Correction(Written(word, text)) is { } correct)
            {
                right = $"{right[..word.Min(w => w.Start)]}{correct}{right[word.Max(w => w.End)..]}";
            }
        }

        return right == text ? null : right;
    }

    private static OtherWords Completions(string written, Asking asking) => new(Completed, Terms(asking.Words.Completions(written, MostCompletions), asking));

    private static ImmutableArray<List<Token>> Terms(ImmutableArray<string> words, Asking asking) =>
        [.. words.Select(w => Token.Of(w, asking.Analyzer)).Where(t => t.Count > 0)];

    private static string Written(List<Token> word, string text) => text[word.Min(w => w.Start)..word.Max(w => w.End)].ToLowerInvariant();
}
