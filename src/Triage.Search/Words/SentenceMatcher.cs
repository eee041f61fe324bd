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
    private readonly Denials denials;

    public SentenceMatcher(string text, List<Word> words)
    {
        this.text = text;
        this.words = words;
        denials = new(words);
        byStem = Enumerable.Range(0, words.Count).Where(i => words[i].Stem.Length > 0).ToLookup(i => words[i].Stem);
    }

    /// <summary>Everything that fits, each phrasing in all its places.</summary>
    public IEnumerable<PhrasingMatch> Find(Vocabulary vocabulary, bool deeds) =>
        vocabulary.With(byStem.Select(g => g.Key), deeds)
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
            denial = denials.Of(first, last, before > 0);
            if (denial is null || (phrasing.OfMachine && words[denial.Value].Role is not WordRole.No))
            {
                return null;
            }
        }

        if (HeadWords.ChangeWhatIsMeant(words, phrasing, at))
        {
            return null;
        }

        if ((phrasing.NeedsThereIs && !SaysThereIs(first, last)) || (phrasing is { Value: 0, Derived: false, Negation: null, OnlyWord: { } only } && !IsSaid(only, first)))
        {
            return null;
        }

        if (phrasing is { Value: 0, Finding.Nominal: false, Negation: null } && HardlySaid(first, last, at))
        {
            return null;
        }

        if (!Quantities.Said(words, first - MostGaps, last + 1).HasFlag(phrasing.Quantity))
        {
            return null;
        }

        if (!phrasing.OneOf.IsEmpty && !words[Math.Max(0, first - MostGaps)..Math.Min(words.Count, last + MostGaps + 1)].Exists(w => phrasing.OneOf.Contains(w.Text)))
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
        if (gaps > Math.Min(MostGaps, Math.Max(1, at.Length - 1)))
        {
            return null;
        }

        var score = at.Sum(i => words[i].Role is WordRole.Light ? 8 : 10) + (denial is { } no ? at.Count(i => i < no) == phrasing.Negation ? 7 : 6 : 0) - (2 * gaps) - turned - (shared is null ? 0 : 4)
            + (phrasing.Quantity is Quantity.Unsaid ? 0 : 3) - at.Count(i => words[i].Corrected) - (phrasing.Derived ? 5 : 0);
        return new(phrasing, at, denial, score) { Shared = shared, Neither = shared is { } s && words[s].Text == "nor" && denial < s };
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
        words[at].Text == word || denials.Before(at) is not null || denials.After(at, mayBeNo: false) is not null || SaysThereIs(at, at);

    /// <summary>"Only the left output works", "hardly shows anything", "reads some discs": nothing normal is said.</summary>
    private bool HardlySaid(int first, int last, ImmutableArray<int> at)
    {
        var from = first;
        while (from > 0 && first - from < 4 && !words[from - 1].IsBreak)
        {
            from--;
        }

        var to = last;
        while (to + 1 < words.Count && to - last < 3 && !words[to + 1].IsBreak)
        {
            to++;
        }

        if (to + 1 < words.Count && words[to + 1].Text == "except")
        {
            return true;
        }

        return Enumerable.Range(from, to - from + 1).Any(i => !at.Contains(i) && words[i].Text is "only" or "just" or "hardly" or "barely" or "scarcely" or "some" or "few" or "half" or "almost" or "nearly" or "unless");
    }

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
