using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace Triage.Search.Words;

/// <summary>
/// Looks for phrasings in one sentence: their words in any order, near each other, within one clause; a subject may be left out after a
/// break ("the display is dim and flickers"). The numbers are set by hand on the cases in the tests.
/// </summary>
internal sealed partial class SentenceMatcher
{
    private const int MostGaps = 3;
    private const int MostTries = 256;

    private readonly string text;
    private readonly List<Word> words;
    private readonly ILookup<string, int> byStem;

    public SentenceMatcher(string text, List<Word> words)
    {
        this.text = text;
        this.words = words;
        byStem = Enumerable.Range(0, words.Count).Where(i => words[i].Stem.Length > 0).ToLookup(i => words[i].Stem);
    }

    /// <summary>Everything that fits, each phrasing in all its places.</summary>
    public IEnumerable<PhrasingMatch> Find(Vocabulary vocabulary) =>
        vocabulary.With(byStem.Select(g => g.Key))
            .Where(p => p.Stems.All(byStem.Contains))
            .SelectMany(p => Places(p.Stems).Take(MostTries).Select(at => Fit(p, at)))
            .OfType<PhrasingMatch>();

    private IEnumerable<ImmutableArray<int>> Places(ImmutableArray<string> stems)
    {
        IEnumerable<ImmutableArray<int>> places = [[]];
        foreach (var stem in stems)
        {
            places = places.SelectMany(p => byStem[stem].Where(i => !p.Contains(i) && Near(p, i)).Select(i => p.Add(i)));
        }

        return places;
    }

    private static bool Near(ImmutableArray<int> place, int index) => place.IsEmpty || Math.Abs(place[^1] - index) < 16;

    private PhrasingMatch? Fit(Phrasing phrasing, ImmutableArray<int> at)
    {
        var (first, last) = (at.Min(), at.Max());
        int? denial = null;
        if (phrasing.Negation is { } before)
        {
            denial = DenialOf(first, last, before > 0);
            if (denial is null)
            {
                return null;
            }
        }

        if ((phrasing.NeedsThereIs && !SaysThereIs(first, last)) || (phrasing is { Value: 0, Derived: false, Negation: null, OnlyWord: { } only } && !IsSaid(only, first)))
        {
            return null;
        }

        var used = denial is { } d ? at.Add(d) : at;
        var (from, to) = (used.Min(), used.Max());
        int? shared = null;
        if (BreakIn(from, to) is { } broken && !phrasing.SpansBreak)
        {
            var joined = broken >= 0 && words[broken].Role is not WordRole.Comma && (phrasing.Value > 0 || denial is not null || words[broken].Text == "nor");
            if (!joined || phrasing.Derived || !MayCross(broken, used, denial) || !StartsBefore(broken, at))
            {
                return null;
            }

            shared = broken;
        }

        var gaps = Gaps(from, to, used, shared);
        var turned = at.Zip(at.Skip(1)).Count(p => p.First > p.Second);
        if (gaps > Math.Min(MostGaps, at.Length + 1) || (at.Length == 2 && turned > 0 && gaps > 1))
        {
            return null;
        }

        var score = (10 * at.Length) + (denial is { } no ? at.Count(i => i < no) == phrasing.Negation ? 7 : 6 : 0) - (2 * gaps) - turned - (shared is null ? 0 : 4)
            - at.Count(i => words[i].Corrected) - (phrasing.Derived ? 5 : 0);
        return new(phrasing, at, denial, score) { Shared = shared };
    }

    /// <summary>The "no" before the words or the "not" before, among or right behind them.</summary>
    /// <param name="mayFollow">The phrasing itself has words before its denial.</param>
    private int? DenialOf(int first, int last, bool mayFollow)
    {
        for (var i = last; i > first; i--)
        {
            if (words[i].Role is WordRole.Not || (mayFollow && words[i].Role is WordRole.No))
            {
                return i;
            }
        }

        return DenialBefore(first) ?? DenialAfter(last, mayFollow);
    }

    /// <summary>Nearest denial before a word, with no more than a few words and no break but "or" between.</summary>
    public int? DenialBefore(int first)
    {
        var between = 0;
        for (var i = first - 1; i >= 0 && between <= MostGaps; i--)
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
    public int? DenialAfter(int last, bool mayBeNo)
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

    /// <summary>The only break between two words; a second one makes it one that cannot be crossed.</summary>
    private int? BreakIn(int from, int to)
    {
        int? found = null;
        for (var i = from + 1; i < to; i++)
        {
            if (words[i].IsBreak)
            {
                if (found is not null)
                {
                    return -1;
                }

                found = i;
            }
        }

        return found;
    }

    /// <summary>
    /// After the break the phrasing goes on at once: only its subject stands before ("dim and flickers"), or its denial before an "or"
    /// ("nothing on the display or from the speakers"). "Neither … nor" shares the verb behind.
    /// </summary>
    private bool MayCross(int broken, ImmutableArray<int> used, int? denial)
    {
        var neither = denial is { } d && words[d].Text == "neither" && words[broken].Text == "nor";
        if (denial < broken && words[broken].Role is not WordRole.Or)
        {
            return false;
        }

        var next = broken + 1;
        while (next < words.Count && (words[next].Role is WordRole.Function or WordRole.Light || words[next].Aside))
        {
            next++;
        }

        return neither || used.Contains(next);
    }

    /// <summary>What stands before the break is the phrasing's beginning.</summary>
    private static bool StartsBefore(int broken, ImmutableArray<int> at) =>
        at.SkipWhile(i => i < broken).All(i => i > broken);

    private int Gaps(int from, int to, ImmutableArray<int> used, int? shared)
    {
        var gaps = 0;
        for (var i = from + 1; i < to; i++)
        {
            var skipped = shared is { } s && (i > s ? words[s].Text == "nor" : true);
            gaps += !used.Contains(i) && words[i].Role is WordRole.Content && !words[i].Aside && !skipped ? 1 : 0;
        }

        return gaps;
    }

    /// <summary>A normal value of one word is said by just that word, or by any form of it that is denied or called fine.</summary>
    private bool IsSaid(string word, int at) =>
        words[at].Text == word || DenialBefore(at) is not null || DenialAfter(at, mayBeNo: false) is not null || SaysThereIs(at, at);

    private bool SaysThereIs(int first, int last)
    {
        var before = text[..words[first].Span.Start];
        var after = text[words[last].Span.End..];
        return ThereIs().IsMatch(before.Length > 40 ? before[^40..] : before) || IsThere().IsMatch(after.Length > 40 ? after[..40] : after);
    }

    [GeneratedRegex(@"\b(there('?s| is| are| was)|(can|do|does|still) (hear|get|see|give|make)s?|has( got)?|have( got)?|got|gets?|gives?|with)( (a|an|the|some|still|is|good|clear|plenty of))*\s+$", RegexOptions.IgnoreCase)]
    private static partial Regex ThereIs();

    [GeneratedRegex(@"^\s+((is|are|still|comes?|came) )*(ok|okay|fine|there|present|good|normal|perfect|works?|working|back|through|alright)\b", RegexOptions.IgnoreCase)]
    private static partial Regex IsThere();
}
