using System.Collections.Immutable;

namespace Triage.Search.Meaning;

/// <summary>A clause or sentence.</summary>
internal sealed record Saying(string Words, TextSpan Span);

/// <summary>All sayings of a complaint beside all values of the findings.</summary>
internal sealed class Heard
{
    private const double NothingElse = 0.3;

    private readonly Dictionary<(string Finding, string Value), (Saying Saying, Likeness Likeness)> best = [];
    private readonly Dictionary<(Saying, string Finding), double> closest = [];
    private readonly ILookup<string, (string Finding, string Value)> values;

    /// <param name="likenesses">For each saying, how close it comes to each value.</param>
    public Heard(ImmutableArray<Saying> sayings, IEnumerable<ImmutableArray<Likeness>> likenesses)
    {
        foreach (var (saying, all) in sayings.Zip(likenesses))
        {
            foreach (var like in all)
            {
                var key = (like.Finding, like.Value);
                if (!best.TryGetValue(key, out var known) || like.Closeness > known.Likeness.Closeness)
                    best[key] = (saying, like);
                closest[(saying, like.Finding)] = Math.Max(like.Closeness, closest.GetValueOrDefault((saying, like.Finding), -1));
            }
        }

        values = best.Keys.ToLookup(k => k.Finding);
    }

    /// <summary>Of each finding, the value that the text comes closest to.</summary>
    public IEnumerable<(string Finding, string Value)> Closest => values.Select(v => v.MaxBy(key => best[key].Likeness.Closeness));

    /// <summary>The saying that comes closest to a value; null when the value has no phrasing of more than a word.</summary>
    public (Saying Saying, Likeness Likeness)? Best((string Finding, string Value) key) => best.TryGetValue(key, out var found) ? found : null;

    public Belief Belief((Saying Saying, Likeness Likeness) meant, double byWords, bool past)
    {
        var (saying, like) = meant;
        var otherValue = values[like.Finding].Where(k => k.Value != like.Value).Select(k => best[k].Likeness.Closeness).DefaultIfEmpty(NothingElse).Max();
        var otherFinding = values.Where(v => v.Key != like.Finding).Select(v => closest[(saying, v.Key)]).DefaultIfEmpty(NothingElse).Max();
        return new(byWords, like.Closeness, otherValue, otherFinding, Denial.In(saying.Words) != like.Denies, like.Normal, past, Sayings.WordsIn(saying.Words));
    }
}
