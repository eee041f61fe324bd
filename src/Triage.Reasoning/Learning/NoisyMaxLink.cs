using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>
/// From what is seen when a cause is the only one, leak included, to what it produces by itself, and back
/// (noisy-MAX: Henrion 1989, Díez 1993): Q(x) = C(x) · L(x), each P(value at most x).
/// </summary>
internal static class NoisyMaxLink
{
    /// <summary>P(value | only this cause, leak included).</summary>
    internal static ImmutableArray<double> Seen(ImmutableArray<double> produces, Distribution leak)
    {
        double[] l = leak.Cumulative();
        double[] c = new Distribution(produces, 0).Cumulative();
        return Differences([.. c.Zip(l, (a, b) => a * b)]);
    }

    /// <summary>P(value that the cause produces by itself): C = Q / L, made monotone and kept within 0 … 1.</summary>
    internal static Distribution Produced(Distribution seen, Distribution leak)
    {
        double[] q = seen.Cumulative();
        double[] l = leak.Cumulative();
        double[] c = [.. q.Zip(l, (a, b) => b > 0 ? a / b : 0)];
        double[] monotone = Monotone(c[..^1]);
        return new(Differences([.. monotone.Select(x => Math.Clamp(x, 0, 1)), 1]), seen.Weight);
    }

    /// <summary>Least-squares monotone fit: pool adjacent violators (Ayer et al. 1955).</summary>
    static double[] Monotone(double[] values)
    {
        var blocks = new List<(double Sum, int Count)>();
        foreach (double value in values)
        {
            (double Sum, int Count) block = (value, 1);
            while (blocks.Count > 0 && blocks[^1].Sum / blocks[^1].Count > block.Sum / block.Count)
            {
                block = (block.Sum + blocks[^1].Sum, block.Count + blocks[^1].Count);
                blocks.RemoveAt(blocks.Count - 1);
            }
            blocks.Add(block);
        }
        return [.. blocks.SelectMany(b => Enumerable.Repeat(b.Sum / b.Count, b.Count))];
    }

    static ImmutableArray<double> Differences(double[] cumulative) =>
        [.. cumulative.Select((c, x) => x == 0 ? c : Math.Max(0, c - cumulative[x - 1]))];
}
