using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>
/// The additive statistics of a set of jobs, in whole billionths of a job: integer sums do not depend on the order of the
/// jobs, and taking a job out gives back exactly what was there before.
/// </summary>
internal sealed class Tally
{
    const double Unit = 1e9;
    static readonly ImmutableSortedSet<string> None = ImmutableSortedSet.Create<string>(StringComparer.Ordinal);

    internal static Tally Empty { get; } = new(ImmutableDictionary<TallyKey, long>.Empty, ImmutableDictionary<(Sum, string), ImmutableSortedSet<string>>.Empty);

    readonly ImmutableDictionary<TallyKey, long> sums;
    readonly ImmutableDictionary<(Sum Sum, string At), ImmutableSortedSet<string>> subjects;

    Tally(ImmutableDictionary<TallyKey, long> sums, ImmutableDictionary<(Sum Sum, string At), ImmutableSortedSet<string>> subjects) => (this.sums, this.subjects) = (sums, subjects);

    internal IEnumerable<TallyKey> Keys => sums.Keys;

    /// <summary>Weight counted under the key, in jobs.</summary>
    internal double this[TallyKey key] => sums.GetValueOrDefault(key) / Unit;

    /// <summary>Levels right below one that have jobs, in a fixed order.</summary>
    internal ImmutableSortedSet<string> Below(string level) => Subjects(Sum.Below, level);

    /// <summary>Subjects with anything counted at a level, in a fixed order: of levels, shares and exposures.</summary>
    internal ImmutableSortedSet<string> Subjects(Sum sum, string level) => subjects.GetValueOrDefault((sum, level), None);

    internal Tally Plus(IEnumerable<Credit> credits) => Changed(credits, 1);

    internal Tally Minus(IEnumerable<Credit> credits) => Changed(credits, -1);

    /// <summary>Counts many at once, in a mutable table.</summary>
    internal Tally PlusMany(IEnumerable<Credit> credits)
    {
        var table = new Dictionary<TallyKey, long>(sums);
        foreach (var (key, amount) in credits)
            table[key] = table.GetValueOrDefault(key) + Units(amount);
        var kept = table.Where(sum => sum.Value != 0).ToImmutableDictionary();
        return new(kept, kept.Keys.Where(Listed).GroupBy(key => (key.Sum, key.At), key => key.Subject)
            .ToImmutableDictionary(group => group.Key, group => group.ToImmutableSortedSet(StringComparer.Ordinal)));
    }

    Tally Changed(IEnumerable<Credit> credits, int sign)
    {
        var builder = sums.ToBuilder();
        var listed = subjects;
        foreach (var (key, amount) in credits)
        {
            long sum = builder.GetValueOrDefault(key) + sign * Units(amount);
            if (sum == 0) builder.Remove(key);
            else builder[key] = sum;
            if (!Listed(key)) continue;
            ImmutableSortedSet<string> before = listed.GetValueOrDefault((key.Sum, key.At), None);
            listed = listed.SetItem((key.Sum, key.At), sum == 0 ? before.Remove(key.Subject) : before.Add(key.Subject));
        }
        return new(builder.ToImmutable(), listed);
    }

    static bool Listed(TallyKey key) => key.Sum is Sum.Below or Sum.Share or Sum.Exposure;

    static long Units(double amount) => (long)Math.Round(amount * Unit);
}

/// <summary>What a job adds to one sum.</summary>
/// <param name="Key">The sum.</param>
/// <param name="Amount">In jobs, 0 … 1.</param>
internal readonly record struct Credit(TallyKey Key, double Amount);
