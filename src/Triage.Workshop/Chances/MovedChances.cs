using System.Collections.Immutable;
using Triage.Reasoning;
using Triage.Reasoning.Inference;

namespace Triage.Workshop.Chances;

/// <summary>Takes what moves between single faults into everything that rests on it.</summary>
internal static class MovedChances
{
    public static Posterior Of(Posterior posterior, ImmutableArray<MovedChance> moves) => moves.IsEmpty ? posterior : posterior with
    {
        Marginals = Of(posterior.Marginals, moves, m => m.AtFirst),
        Remaining = Of(posterior.Remaining, moves, m => m.Now),
    };

    /// <summary>A fault that alone is too unlikely by the network to be listed, and is not after the move, is listed.</summary>
    public static HypothesisSet Of(HypothesisSet set, ImmutableArray<MovedChance> moves)
    {
        if (moves.IsEmpty)
            return set;
        var gains = moves.ToDictionary(m => m.Place, m => m.Now);
        var cleared = moves.Sum(m => m.AtFirst - m.Now);
        var listed = set.Listed.Select(h => h.Faulty.Length switch
        {
            0 => h with { Probability = Math.Max(0, h.Probability + cleared) },
            1 when gains.Remove(h.Faulty[0], out var gain) => h with { Probability = Math.Max(0, h.Probability + gain) },
            _ => h,
        }).ToList();
        listed.AddRange(gains.Where(g => g.Value > 0).Select(g => new Hypothesis(g.Value, [g.Key])));
        return set with { Listed = [.. listed.OrderByDescending(h => h.Probability)] };
    }

    /// <summary>By as much as the log-odds of the probability inside.</summary>
    public static Interval Of(Interval interval, double before, double after)
    {
        if (before is <= 0 or >= 1 || after is <= 0 or >= 1)
            return new(Math.Min(interval.Lower, after), Math.Max(interval.Upper, after));
        var odds = after / (1 - after) * ((1 - before) / before);
        return new(Moved(interval.Lower), Moved(interval.Upper));

        double Moved(double p) => p is <= 0 or >= 1 ? p : p * odds / (1 - p + p * odds);
    }

    /// <summary>What a state gains, its root's being good loses.</summary>
    private static ImmutableArray<ImmutableArray<double>> Of(ImmutableArray<ImmutableArray<double>> rows, ImmutableArray<MovedChance> moves, Func<MovedChance, double> gain)
    {
        var moved = rows.Select(row => row.ToArray()).ToArray();
        foreach (var move in moves)
        {
            moved[move.Place.Root][move.Place.State] = Math.Clamp(moved[move.Place.Root][move.Place.State] + gain(move), 0, 1);
            moved[move.Place.Root][0] = Math.Clamp(moved[move.Place.Root][0] - gain(move), 0, 1);
        }

        return [.. moved.Select(row => row.ToImmutableArray())];
    }
}
