namespace Triage.Search.Words;

/// <summary>Which "no" or "not" of a sentence reaches some of its words.</summary>
internal sealed class Denials(List<Word> words)
{
    private const int MostBetween = 3;

    /// <summary>The "no" before the words or the "not" before, among or right behind them.</summary>
    /// <param name="mayFollow">The phrasing itself has words before its denial.</param>
    public int? Of(int first, int last, bool mayFollow)
    {
        for (var i = last; i > first; i--)
        {
            if (words[i].Role is WordRole.Not || (mayFollow && words[i].Role is WordRole.No))
            {
                return i;
            }
        }

        return Before(first) ?? After(last, mayFollow);
    }

    /// <summary>Nearest denial before a word, with no more than a few words and no break but "or" between.</summary>
    public int? Before(int first)
    {
        var between = 0;
        for (var i = first - 1; i >= 0 && between <= MostBetween; i--)
        {
            if (words[i].IsNegation)
            {
                return i;
            }

            if (words[i].IsBreak && words[i].Role is not WordRole.Or)
            {
                return null;
            }

            between += words[i].Role is WordRole.Content && !words[i].Aside ? 1 : 0;
        }

        return null;
    }

    /// <summary>"the sound is not there", "display shows nothing".</summary>
    public int? After(int last, bool mayBeNo)
    {
        var denial = last + 1;
        while (denial < words.Count && words[denial].Role is WordRole.Function or WordRole.Light)
        {
            denial++;
        }

        if (denial >= words.Count || !(words[denial].Role is WordRole.Not || words[denial].Text is "none" or "nil" || (mayBeNo && words[denial].Role is WordRole.No)))
        {
            return null;
        }

        var next = denial + 1;
        while (next < words.Count && words[next].Role is WordRole.Function or WordRole.Light)
        {
            next++;
        }

        return next == words.Count || words[next].IsBreak || words[next].Text is "present" or "heard" or "seen" or "hear" or "see" || words[next].Stem == Lexicon.Fine ? denial : null;
    }
}
