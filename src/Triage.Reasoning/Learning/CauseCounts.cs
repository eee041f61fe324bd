using System.Collections.Concurrent;

namespace Triage.Reasoning.Learning;

/// <summary>What a level's jobs say of its rates.</summary>
/// <param name="Had">n_f: jobs that had each fault.</param>
/// <param name="Jobs">Causes met on machines of each scope, in jobs: whichever it was could have been any fault of the scope.</param>
internal sealed record CauseCounts(double[] Had, double[] Jobs)
{
    internal CauseCounts Without(CauseCounts less, CauseCounts put) => new(Changed(Had, less.Had, put.Had), Changed(Jobs, less.Jobs, put.Jobs));

    /// <summary>What a member's counts tell of the step above.</summary>
    internal CauseCounts Told(double kappa) => new(LevelTree.Told(Had, kappa), LevelTree.Told(Jobs, kappa));

    internal CauseCounts Nothing => new(new double[Had.Length], new double[Jobs.Length]);

    static double[] Changed(double[] counts, double[] less, double[] put) => [.. counts.Select((count, i) => Math.Max(0, count - less[i] + put[i]))];
}

/// <summary>Counts of causes by level, with what lies below discounted: had and exposed alike, since both sum to the same jobs.</summary>
internal sealed class CauseCountsTree(KnowledgeIndex known, Tally tally, IReadOnlyList<double> kappas)
{
    readonly ConcurrentDictionary<string, CauseCounts> levels = new();
    readonly LevelTree had = new(tally, level => Counts(tally, Sum.Share, level, known.Number, known.Knowledge.Faults.Length), kappas);
    readonly LevelTree jobs = new(tally, level => Counts(tally, Sum.Exposure, level, known.ScopeNumber, known.Scopes.Length), kappas);

    internal CauseCounts At(string level, int depth) => levels.GetOrAdd(level, _ => new(had.Effective(level, depth), jobs.Effective(level, depth)));

    static double[] Counts(Tally tally, Sum sum, string level, Func<string, int?> number, int length)
    {
        var counts = new double[length];
        foreach (string subject in tally.Subjects(sum, level))
            if (number(subject) is { } at) counts[at] += tally[new(sum, level, subject)];
        return counts;
    }
}
