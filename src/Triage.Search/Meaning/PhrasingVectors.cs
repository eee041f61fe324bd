using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Search.Meaning;

/// <summary>Every way of putting each value of some findings, as vectors.</summary>
internal sealed class PhrasingVectors
{
    private readonly ImmutableArray<Value> values;

    public PhrasingVectors(IEnumerable<Finding> findings, SentenceVectors vectors)
    {
        var said = findings.SelectMany(f => f.Values.Select((v, i) => (Finding: f, Value: v, Normal: i == 0 && !f.Nominal, Says: Says(v)))).Where(v => v.Says.Length > 0).ToList();
        var all = vectors.Of([.. said.SelectMany(v => v.Says)]);
        var next = 0;
        values = [.. said.Select(v => new Value(v.Finding.Id, v.Value.Id, v.Normal, [.. v.Says.Select(s => new Phrasing(s, all[next++], Denial.In(s)))]))];
    }

    /// <summary>How close a saying comes to each value that can be put in more than a word.</summary>
    public IEnumerable<Likeness> To(float[] saying) => values.Select(value =>
    {
        var closest = value.Phrasings.Select(p => (Closeness: SentenceVectors.Closeness(saying, p.Vector), p.Words, p.Denies)).MaxBy(p => p.Closeness);
        return new Likeness(value.Finding, value.Id, value.Normal, closest.Closeness, closest.Words, closest.Denies);
    });

    // one word alone ("dead") fits what is meant of anything
    private static ImmutableArray<string> Says(FindingValue value) =>
        [.. value.Says.Append(value.Name).Where(says => says.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length > 1).Distinct(StringComparer.Ordinal)];

    private sealed record Value(string Finding, string Id, bool Normal, ImmutableArray<Phrasing> Phrasings);

    private readonly record struct Phrasing(string Words, float[] Vector, bool Denies);
}

/// <summary>How close a saying comes to a value of a finding.</summary>
/// <param name="Normal">The value says that nothing is wrong.</param>
/// <param name="Closeness">Of the closest phrasing, −1 to 1.</param>
/// <param name="Phrasing">The closest one.</param>
/// <param name="Denies">The closest phrasing has a word such as "not" or "nothing".</param>
internal sealed record Likeness(string Finding, string Value, bool Normal, double Closeness, string Phrasing, bool Denies);
