using System.Collections.Immutable;

namespace Triage.Search.Words;

/// <summary>One complaint being read: phrasings chosen so that no word is used twice, then what is denied, when it shows, what is left.</summary>
internal sealed class ComplaintReading
{
    private const double OfSomethingElse = 0.7;

    private readonly string text;
    private readonly Vocabulary vocabulary;
    private readonly ImmutableArray<TriedFix> tried;
    private readonly List<Circumstance> circumstances;
    private readonly string plain;
    private readonly string withDeeds;

    public ComplaintReading(string text, Vocabulary vocabulary)
    {
        this.text = text;
        this.vocabulary = vocabulary;
        (tried, var rest) = TriedFixes.In(text);
        circumstances = Circumstance.In(rest);
        (plain, withDeeds) = (WithoutHedges(rest), WithoutHedges(text));
    }

    private string WithoutHedges(string said)
    {
        var letters = said.ToCharArray();
        foreach (var hedge in circumstances.Where(c => c.Kind is Circumstance.Hedged))
        {
            Array.Fill(letters, ' ', hedge.Span.Start, hedge.Span.Length);
        }

        return new(letters);
    }

    public Recognition Result()
    {
        var left = ImmutableArray.CreateBuilder<Piece>();
        var found = Read(plain, deeds: false, left).ToList();
        if (!tried.IsEmpty)
        {
            found.AddRange(Read(withDeeds, deeds: true, ImmutableArray.CreateBuilder<Piece>()).Where(f => tried.Any(t => f.Span.Start < t.Span.End && t.Span.Start < f.Span.End)));
        }

        found.AddRange(StatedVolts.In(plain, vocabulary).Select(v => v with { Words = v.Span.Of(text) }).Where(v => !found.Any(f => f.Finding == v.Finding && f.Value == v.Value)));
        return new([.. Contradictions.Settled(found, vocabulary).OrderBy(f => f.Span.Start).DistinctBy(f => (f.Finding, f.Value, f.Negated))], left.ToImmutable(), tried);
    }

    /// <param name="left">Takes what nothing was made of.</param>
    private List<RecognisedFinding> Read(string said, bool deeds, ImmutableArray<Piece>.Builder left)
    {
        var found = new List<RecognisedFinding>();
        foreach (var sentence in WordReader.Sentences(said, vocabulary.Correct))
        {
            var words = sentence.ConvertAll(Aside);
            var denials = new Denials(words);
            var chosen = Choosing.Best(new SentenceMatcher(said, words).Find(vocabulary, deeds).Where(m => !IsAllWeather(m, words)));
            var placed = new Placed(said, words, chosen, circumstances);
            var pieces = Left(words, chosen).ToList();
            foreach (var match in chosen)
            {
                if (Finding(match, denials, words, chosen, placed) is { } finding)
                {
                    found.Add(finding);
                }
                else
                {
                    pieces.Add(Piece(words[match.First], words[match.Last]));
                }
            }

            if (vocabulary.Has(ComesAndGoes.Finding))
                found.AddRange(ComesAndGoes.In(words, chosen, circumstances, vocabulary.Machine).Select(f => f with { Words = f.Span.Of(text) }));
            left.AddRange(pieces.Count + chosen.Count > 0 || !words.Exists(Says) ? pieces.OrderBy(p => p.Span.Start) : [Piece(words[0], words[^1])]);
        }

        return found;
    }

    private Word Aside(Word word) => !circumstances.Exists(c => word.Span.Start < c.Span.End && c.Span.Start < word.Span.End) ? word
        : word.Role is WordRole.Light ? word with { Aside = true, Stem = "" }
        : word with { Aside = true };

    /// <summary>"once it's properly warm" says when, not what.</summary>
    private bool IsAllWeather(PhrasingMatch match, List<Word> words) =>
        circumstances.Exists(c => c.Kind is "warm" or "cold" && match.All.All(i => words[i].Span.Start >= c.Span.Start && words[i].Span.End <= c.Span.End));

    private RecognisedFinding? Finding(PhrasingMatch match, Denials denials, List<Word> words, List<PhrasingMatch> chosen, Placed placed)
    {
        var phrasing = match.Phrasing;
        var denial = match.Denial is null && !phrasing.Derived ? Denial(match, denials, words, chosen) : null;
        if (placed.Has(match, Circumstance.Past) || Subjects.IsAnother(match, words, vocabulary.Machine) || (denial is not null && phrasing.Finding.Nominal))
        {
            return null;
        }

        if (phrasing is { Value: 0, Finding.Nominal: false } && placed.Has(match, Circumstance.Intermittent))
        {
            // what works sometimes does not work
            return null;
        }

        var value = denial is null ? phrasing.Value : phrasing.Value > 0 ? 0 : phrasing.Finding.Values.Length - 1;
        var all = denial is { } d ? match.All.Append(d) : match.All;
        var span = new TextSpan(words[all.Min()].Span.Start, 0);
        span = span with { Length = words[all.Max()].Span.End - span.Start };
        var sure = Confidence(match, denial is not null) * (match.At.Length == 1 && match.Denial is null && HasMore(match, words, chosen) ? OfSomethingElse : 1);
        return new(phrasing.Finding.Id, phrasing.Finding.Values[value].Id, span.Of(text), span, Math.Round(sure, 2))
        {
            Negated = value == 0 && !phrasing.Finding.Nominal && (denial ?? match.Denial) is not null,
            When = placed.Conditions(match),
            Hedged = placed.Has(match, Circumstance.Hedged),
            Intermittent = placed.Has(match, Circumstance.Intermittent),
            WholeClause = !phrasing.Derived && denial is null && !HasMore(match, words, [match]),
        };
    }

    /// <summary>A "no" or "not" that no phrasing has for itself, and whose nearest phrasing (or one of several joined by "or") this is.</summary>
    private static int? Denial(PhrasingMatch match, Denials denials, List<Word> words, List<PhrasingMatch> chosen)
    {
        bool Taken(int i) => chosen.Any(m => m.Denial == i);
        bool Inside(int i) => words[i].Role is WordRole.Not && !Taken(i);
        for (var i = match.First + 1; i < match.Last; i++)
        {
            if (Inside(i))
            {
                return i;
            }
        }

        if (denials.Before(match.First) is { } before)
        {
            // "no smoke or burning smell": one denial for all that "or" joins
            var or = words[before..match.First].Any(w => w.Role is WordRole.Or);
            var between = chosen.Any(m => m != match && m.First > before && m.Last < match.First);
            if (or || (!between && !Taken(before)))
            {
                return before;
            }
        }

        return denials.After(match.Last, mayBeNo: false) is { } after && !Taken(after) ? after : null;
    }

    private static double Confidence(PhrasingMatch match, bool denied)
    {
        var stems = match.At.Length;
        var full = (10.0 * stems) + (match.Denial is null ? 0 : 7);
        var fit = 1 - ((full - match.Score) / (full + 10));
        return Math.Clamp((stems == 1 && match.Denial is null ? 0.75 : 0.92) * fit * (denied ? 0.9 : 1), 0.2, 0.95);
    }

    /// <summary>The clause has words that nothing was made of: "D5 dead" need not mean that the machine is dead, "my radio is dead" does.</summary>
    private bool HasMore(PhrasingMatch match, List<Word> words, List<PhrasingMatch> chosen) =>
        words.Where((w, i) => w.Clause == words[match.First].Clause && w.Role is WordRole.Content && !w.Aside && !vocabulary.Machine.IsAt(words, i) && !chosen.Any(m => m.All.Contains(i))).Any();

    /// <summary>Runs of words that nothing was made of.</summary>
    private IEnumerable<Piece> Left(List<Word> words, List<PhrasingMatch> chosen)
    {
        var used = chosen.SelectMany(m => m.All).ToHashSet();
        int? first = null;
        var last = 0;
        for (var i = 0; i <= words.Count; i++)
        {
            var ends = i == words.Count || words[i].IsBreak || used.Contains(i) || words[i].Aside;
            if (ends && first is { } from)
            {
                yield return Piece(words[from], words[last]);
                first = null;
            }
            else if (!ends && words[i].Role is WordRole.Content && (first is not null || words[i].Stem != Lexicon.Fine))
            {
                first ??= i;
                last = i;
            }
        }
    }

    private static bool Says(Word word) => !word.Aside && (word.IsNegation || word.Role is WordRole.Content or WordRole.Light);

    private Piece Piece(Word first, Word last)
    {
        var span = first.Span with { Length = last.Span.End - first.Span.Start };
        return new(span.Of(text), span);
    }
}
