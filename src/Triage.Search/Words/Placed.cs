using System.Collections.Immutable;

namespace Triage.Search.Words;

/// <summary>Which circumstance belongs to which phrasing of a sentence.</summary>
internal sealed class Placed
{
    private readonly ILookup<PhrasingMatch, Circumstance> byMatch;

    public Placed(string text, List<Word> words, List<PhrasingMatch> chosen, List<Circumstance> circumstances)
    {
        if (chosen.Count == 0)
        {
            byMatch = Array.Empty<(PhrasingMatch, Circumstance)>().ToLookup(p => p.Item1, p => p.Item2);
            return;
        }

        var (start, end) = (words[0].Span.Start, words[^1].Span.End);
        var used = chosen.SelectMany(m => m.All).Select(i => words[i].Span).ToList();
        byMatch = circumstances
            .Where(c => c.Span.End > start - 1 && c.Span.Start < end + 1 || IsNextTo(text, words, c))
            .Where(c => c.Kind is Circumstance.Hedged || !used.Exists(u => u.Start >= c.Span.Start && u.End <= c.Span.End))
            .SelectMany(c => Owners(words, chosen, c).Select(m => (Match: m, Circumstance: c)))
            .ToLookup(p => p.Match, p => p.Circumstance);
    }

    public ImmutableArray<string> Conditions(PhrasingMatch match) =>
        [.. byMatch[match].Where(c => c.IsCondition).Select(c => c.Kind).Distinct()];

    public bool Has(PhrasingMatch match, string kind) => byMatch[match].Any(c => c.Kind == kind);

    /// <summary>Hedges are blanked out; they may stand just outside the first or last word.</summary>
    private static bool IsNextTo(string text, List<Word> words, Circumstance c)
    {
        var (from, to) = c.Span.End <= words[0].Span.Start ? (c.Span.End, words[0].Span.Start) : (words[^1].Span.End, c.Span.Start);
        return to >= from && text.AsSpan(from, to - from).IndexOfAny(".!?;\n") < 0;
    }

    private static IEnumerable<PhrasingMatch> Owners(List<Word> words, List<PhrasingMatch> chosen, Circumstance c)
    {
        var here = words.FindLast(w => w.Span.Start < c.Span.End && w.Span.End > c.Span.Start)
            ?? words.Find(w => w.Span.End > c.Span.Start && !w.IsBreak)
            ?? words[^1];
        if (c.IsLeadIn)
        {
            return chosen.Where(m => words[m.First].Span.Start >= c.Span.End).Take(1);
        }

        var own = chosen.FindAll(m => m.Own.Any(i => words[i].Clause == here.Clause));
        if (own.Count > 0 || c.Kind is Circumstance.Past)
        {
            return own;
        }

        if (c.Kind is "warm" or "cold" && words.Exists(w => w.Clause == here.Clause && w.Stem == Lexicon.Fine))
        {
            // "no sound when cold, fine when warm": what is fine then is what was said before
            return [];
        }

        var before = chosen.LastOrDefault(m => words[m.Last].Span.End <= c.Span.Start) is { } last
            ? chosen.Where(m => words[m.Last].Clause == words[last.Last].Clause)
            : [];
        var saysMore = words.Exists(w => w.Clause == here.Clause && w.Role is WordRole.Content && !w.Aside);
        return before.Any() ? before : chosen.Take(saysMore ? 0 : 1);
    }
}
