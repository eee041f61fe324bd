using System.Collections.Immutable;

namespace Triage.Search.Words;

/// <summary>
/// Reads a clause that no phrasing fits by the phrasing most like it: the cosine of their words, each weighted by its inverse document frequency
/// (Salton &amp; Buckley 1988, "Term-weighting approaches in automatic text retrieval"). A denial must stand in both or in neither.
/// </summary>
internal sealed class NearestPhrasing
{
    // set by hand on the odd half of the held-out complaints
    private const double NearEnough = 0.55;
    private const double Sureness = 0.6;

    private readonly ILookup<string, Phrasing> byStem;
    private readonly Dictionary<string, double> weights;
    private readonly double rarest;

    public NearestPhrasing(IReadOnlyCollection<Phrasing> phrasings)
    {
        byStem = phrasings.Where(p => !p.Derived).SelectMany(p => p.Stems.Distinct().Select(s => (Stem: s, Phrasing: p))).ToLookup(p => p.Stem, p => p.Phrasing);
        rarest = Math.Log(phrasings.Count + 1);
        weights = byStem.ToDictionary(g => g.Key, g => Math.Log((phrasings.Count + 1.0) / g.Count()));
    }

    /// <summary>One finding at most for each clause that no phrasing was found in. Its words are still to be filled in.</summary>
    public IEnumerable<RecognisedFinding> In(List<Word> words, List<PhrasingMatch> chosen)
    {
        var taken = chosen.SelectMany(m => m.All).Select(i => words[i].Clause).ToHashSet();
        return words.GroupBy(w => w.Clause).Where(c => !taken.Contains(c.Key)).Select(c => Nearest([.. c])).OfType<RecognisedFinding>();
    }

    private RecognisedFinding? Nearest(ImmutableArray<Word> clause)
    {
        var told = clause.Where(w => w.Role is WordRole.Content && !w.Aside).ToList();
        var stems = told.Select(w => w.Stem).ToHashSet();
        if (stems.Count < 2)
        {
            return null;
        }

        var denied = clause.Any(w => w.IsNegation);
        var best = stems.SelectMany(s => byStem[s]).Distinct()
            .Where(p => p.Negation is not null == denied)
            .Select(p => (Phrasing: p, Likeness: Likeness(p.Stems, stems)))
            .Where(p => p.Likeness >= NearEnough)
            .OrderByDescending(p => p.Likeness).ThenBy(p => p.Phrasing.Finding.Id, StringComparer.Ordinal)
            .FirstOrDefault();
        if (best.Phrasing is not { } phrasing)
        {
            return null;
        }

        var span = told[0].Span with { Length = told[^1].Span.End - told[0].Span.Start };
        return new(phrasing.Finding.Id, phrasing.Finding.Values[phrasing.Value].Id, "", span, Math.Round(best.Likeness * Sureness, 2))
        {
            Negated = denied && phrasing.Value == 0 && !phrasing.Finding.Nominal,
        };
    }

    private double Likeness(ImmutableArray<string> phrasing, HashSet<string> clause)
    {
        var shared = phrasing.Distinct().Where(clause.Contains).ToList();
        return shared.Count < 2 ? 0 : Squares(shared) / Math.Sqrt(Squares(phrasing.Distinct()) * Squares(clause));
    }

    private double Squares(IEnumerable<string> stems) => stems.Sum(s => Math.Pow(weights.GetValueOrDefault(s, rarest), 2));
}
