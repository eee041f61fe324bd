using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>
/// Findings on which others depend most: greatest conditional mutual information with all others given the cause
/// (Friedman, Geiger and Goldszmidt 1997), among those met beside others in enough jobs.
/// </summary>
internal static class ParentChoice
{
    // common practice, no source: fewer joint counts say little, more parents cost more than they tell
    const int Most = 8;
    const double FewestJobs = 30;

    // a parent that tells far less than the best only waters down what the others tell
    const double LeastPart = 0.1;

    internal static ImmutableArray<string> Of(IReadOnlyList<SoleCause> cases)
    {
        var pairs = new Dictionary<(string Fault, CheckedFinding Parent, CheckedFinding Child), double>();
        var checks = new Dictionary<(string Fault, string Parent, string Child), double>();
        var beside = new Dictionary<string, double>();
        foreach (var (fault, seen, weight) in cases)
            foreach (CheckedFinding a in seen)
            {
                if (seen.Length > 1) Add(beside, a.Finding, weight);
                foreach (CheckedFinding b in seen)
                {
                    Add(pairs, (fault, a, b), weight);
                    Add(checks, (fault, a.Finding, b.Finding), weight);
                }
            }

        double Tells((string Fault, CheckedFinding Parent, CheckedFinding Child) pair, double n)
        {
            var (fault, a, b) = pair;
            double both = checks[(fault, a.Finding, b.Finding)];
            double p = pairs[(fault, a, a)] / checks[(fault, a.Finding, a.Finding)], q = pairs[(fault, b, b)] / checks[(fault, b.Finding, b.Finding)];
            return n * Math.Log(n / both / (p * q));
        }

        (string Finding, double Tells)[] ranked =
        [
            .. pairs.Where(pair => pair.Key.Parent.Finding != pair.Key.Child.Finding && beside[pair.Key.Parent.Finding] >= FewestJobs)
                .GroupBy(pair => pair.Key.Parent.Finding, pair => Tells(pair.Key, pair.Value))
                .Select(finding => (finding.Key, Math.Round(finding.Sum(), 9)))
                .OrderByDescending(finding => finding.Item2).ThenBy(finding => finding.Key, StringComparer.Ordinal),
        ];
        return [.. ranked.TakeWhile(finding => finding.Tells > 0 && finding.Tells >= LeastPart * ranked[0].Tells).Take(Most).Select(finding => finding.Finding)];
    }

    static void Add<TKey>(Dictionary<TKey, double> sums, TKey key, double amount) where TKey : notnull =>
        sums[key] = sums.GetValueOrDefault(key) + amount;
}

/// <summary>A job with one sure cause that the notes list.</summary>
internal sealed record SoleCause(string Fault, CheckedFinding[] Seen, double Weight)
{
    internal required ImmutableArray<string> Levels { get; init; }

    internal required string Scope { get; init; }
}
