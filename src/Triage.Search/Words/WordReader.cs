using System.Text.RegularExpressions;

namespace Triage.Search.Words;

/// <summary>Cuts a text into sentences of words.</summary>
internal static partial class WordReader
{
    // forces an end on text without punctuation
    private const int LongestSentence = 80;

    /// <param name="correct">Gives the word of a phrasing that a misspelling stands for; null when none is near.</param>
    public static List<List<Word>> Sentences(string text, Func<string, string?> correct)
    {
        var sentences = new List<List<Word>> { new() };
        var clause = 0;
        foreach (Match piece in Pieces().Matches(text))
        {
            var span = new TextSpan(piece.Index, piece.Length);
            if (!piece.Groups["word"].Success)
            {
                var ends = piece.Groups["end"].Success || sentences[^1].Count > LongestSentence;
                clause++;
                if (ends)
                {
                    sentences.Add([]);
                }
                else
                {
                    Break(sentences[^1], new(piece.Value, "", WordRole.Comma, span));
                }

                continue;
            }

            var word = Read(piece.Value, span, correct);
            if (word.IsBreak)
            {
                clause++;
                Break(sentences[^1], word with { Clause = clause });
                if (word.Text == "nor")
                {
                    sentences[^1].Add(new("nor", "", WordRole.No, span) { Clause = clause });
                }
            }
            else
            {
                sentences[^1].Add(word with { Clause = clause });
                if (sentences[^1].Count > 2 * LongestSentence)
                {
                    sentences.Add([]);
                }
            }
        }

        return [.. sentences.Where(s => s.Count > 0).Select(Rewritten)];
    }

    private static Word Read(string written, TextSpan span, Func<string, string?> correct)
    {
        var text = written.ToLowerInvariant().Replace('’', '\'');
        // the band, not the verb
        var role = written == "AM" ? WordRole.Content : Lexicon.RoleOf(text);
        if (role is not WordRole.Content)
        {
            return new(text, role is WordRole.Light ? Lexicon.Stem(text) : "", role, span);
        }

        if (text.EndsWith("'s", StringComparison.Ordinal))
        {
            text = text[..^2];
        }

        var corrected = correct(text);
        return new(text, Lexicon.Stem(corrected ?? text), WordRole.Content, span) { Corrected = corrected is not null };
    }

    /// <summary>Two breaks side by side are one; the word says more than the comma.</summary>
    private static void Break(List<Word> sentence, Word word)
    {
        if (sentence.Count > 0 && sentence[^1].IsBreak)
        {
            sentence[^1] = word.Role is WordRole.Comma ? sentence[^1] : word;
        }
        else
        {
            sentence.Add(word);
        }
    }

    /// <summary>"nothing wrong with" says works; "nothing but" says only; "no longer", "fails to", "stopped working" say not; "won't stop" says keeps; "not only" says nothing.</summary>
    private static List<Word> Rewritten(List<Word> words)
    {
        for (var i = 0; i + 1 < words.Count; i++)
        {
            var (here, next) = (words[i], words[i + 1]);
            if (here.Role is WordRole.No && next.Text is "wrong" or "problem" or "problems" or "issue" or "issues" or "trouble")
            {
                words[i] = here with { Role = WordRole.Function };
                words[i + 1] = next with { Stem = Lexicon.Stem("works"), Role = WordRole.Content };
            }
            else if (here.Text is "one" && next.Text is "speaker" or "loudspeaker" or "side" or "channel" or "output")
            {
                // "the speaker is dead" is not yet "one speaker is dead"
                words[i] = here with { Role = WordRole.Content, Stem = "one" };
            }
            else if (here.Role is WordRole.Not && next.Text is "the" or "my" or "its")
            {
                // "it's not the display": something else is meant
                words[i] = here with { Role = WordRole.Function };
            }
            else if (here.Text is "work" or "works" or "working" or "worked" or "functioning" && next.Text is "properly" or "ok" or "okay" or "fine" or "normally" or "perfectly" or "correctly")
            {
                // one thing said, not two
                words[i + 1] = next with { Role = WordRole.Function, Stem = "" };
            }
            else if (here.Text is "nothing" && next.Text is "but")
            {
                words[i] = here with { Role = WordRole.Light, Stem = Lexicon.Stem("only") };
                words[i + 1] = next with { Role = WordRole.Function };
            }
            else if (here.Role is WordRole.Not && next.Text is "stop" or "stops" && i + 2 < words.Count && words[i + 2].Text.EndsWith("ing", StringComparison.Ordinal))
            {
                // "won't stop humming"
                words[i] = here with { Role = WordRole.Function };
                words[i + 1] = next with { Stem = Lexicon.Stem("keeps"), Role = WordRole.Content };
            }
            else if (here.IsNegation && next.Text is "only" or "longer" or "always")
            {
                words[i] = here with { Role = next.Text is "only" ? WordRole.Function : WordRole.Not };
                words[i + 1] = next with { Role = WordRole.Function };
            }
            else if ((here.Text is "fails" or "failed" or "refuses" or "refused" && next.Text is "to")
                || (here.Text is "stopped" or "quit" or "stop" && next.Text is "working"))
            {
                words[i] = here with { Role = WordRole.Not, Stem = "" };
            }
        }

        return words;
    }

    [GeneratedRegex(@"(?<word>[\p{L}\p{N}]+(?:['’.][\p{L}\p{N}]+)*)|(?<end>(?<!\b(?:esp|approx|etc|e\.g|i\.e|vs|min|mins|hrs|no))[.!?…]+(?=\s|$)|[!?…]+(?=\s|$)|[;\n\r])|[,()\[\]]|(?<=\s)[-–—&+/]+(?=\s)|[—–]")]
    private static partial Regex Pieces();
}
