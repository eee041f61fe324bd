using System.Collections.Immutable;
using Triage.Search.Meaning;

namespace Triage.Search.Words;

/// <summary>
/// Weighs what was read by words with what the sentences mean: unheard wording is understood, and a phrasing whose sentence means
/// something else is left out. What is normal is only taken from words: the model does not hear "not".
/// </summary>
internal sealed class MeaningReader(PhrasingVectors phrasings, Func<string, string, bool> isNormal)
{
    // of a novel only the beginning is weighed: each saying costs a millisecond or two
    private const int MostSayings = 60;

    public Recognition Read(string text, Recognition byWords)
    {
        var sayings = Sayings.In(text).Where(s => !byWords.Tried.Any(t => Overlap(t.Span, s))).Take(MostSayings).Select(s => new Saying(s.Of(text), s)).ToImmutableArray();
        var heard = new Heard(sayings, SentenceVectors.Once([.. sayings.Select(s => s.Words)]).Select(v => phrasings.To(v).ToImmutableArray()));
        var circumstances = Circumstance.In(text);
        var confidence = byWords.Findings.GroupBy(f => (f.Finding, f.Value)).ToDictionary(g => g.Key, g => g.Max(f => f.Confidence));
        var whole = byWords.Findings.Where(f => f.WholeClause).Select(f => (f.Finding, f.Value)).ToHashSet();
        var taken = confidence.Keys.Union(heard.Closest.Where(k => !isNormal(k.Finding, k.Value)))
            .Select(key => (Key: key, heard.Best(key)?.Saying, Belief: whole.Contains(key) ? 1 : Believe(key)))
            .Where(t => confidence.ContainsKey(t.Key) ? t.Belief >= Belief.Enough : t.Belief >= Belief.EnoughAlone && IsMeant(heard.Best(t.Key)!.Value))
            .OrderByDescending(t => t.Belief).ThenBy(t => t.Key)
            .ToList();
        var findings = taken
            .Where((t, i) => confidence.ContainsKey(t.Key) || !taken.Take(i).Any(before => before.Key.Finding == t.Key.Finding))
            .SelectMany(t => confidence.ContainsKey(t.Key)
                ? byWords.Findings.Where(f => (f.Finding, f.Value) == t.Key).Select(f => f with { Sure = t.Belief })
                : [Found(t.Key, t.Saying!, t.Belief, circumstances)])
            .OrderBy(f => f.Span.Start).ThenBy(f => f.Span.Length)
            .ToImmutableArray();
        return byWords with { Findings = findings, NotUnderstood = [.. NotUnderstood(byWords, findings)] };

        double Believe((string Finding, string Value) key)
        {
            var words = confidence.GetValueOrDefault(key);
            return (heard.Best(key) is { } best
                ? heard.Belief(best, words, circumstances.Exists(c => c.Kind is Circumstance.Past && Overlap(c.Span, best.Saying.Span)))
                : Belief.OfWords(words, isNormal(key.Finding, key.Value))).Probability;
        }
    }

    /// <summary>The saying does not say the very opposite of what it comes closest to.</summary>
    private static bool IsMeant((Saying Saying, Likeness Likeness) best) =>
        Denial.In(best.Saying.Words) == best.Likeness.Denies && !Opposites.Between(best.Saying.Words, best.Likeness.Phrasing) && !Opposites.SaysFine(best.Saying.Words);

    private static RecognisedFinding Found((string Finding, string Value) key, Saying saying, double belief, List<Circumstance> circumstances)
    {
        var around = circumstances.FindAll(c => Overlap(c.Span, saying.Span));
        return new(key.Finding, key.Value, saying.Words, saying.Span, Math.Round(belief, 2))
        {
            ByMeaning = true,
            Sure = belief,
            When = [.. around.Where(c => c.IsCondition).Select(c => c.Kind).Distinct()],
            Hedged = around.Exists(c => c.Kind is Circumstance.Hedged),
            Intermittent = around.Exists(c => c.Kind is Circumstance.Intermittent),
        };
    }

    private static IEnumerable<Piece> NotUnderstood(Recognition byWords, ImmutableArray<RecognisedFinding> findings) =>
        byWords.NotUnderstood
            .Concat(byWords.Findings.Where(f => !findings.Any(k => k.Span == f.Span && k.Finding == f.Finding)).Select(f => new Piece(f.Words, f.Span)))
            .Where(piece => !findings.Any(f => f.ByMeaning && Overlap(f.Span, piece.Span)))
            .DistinctBy(piece => piece.Span)
            .OrderBy(piece => piece.Span.Start);

    private static bool Overlap(TextSpan one, TextSpan other) => one.Start < other.End && other.Start < one.End;
}
