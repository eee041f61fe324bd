using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>
/// From what is seen when a cause is the only one, leak included, to what it produces by itself, and back
/// (noisy-MAX: Henrion 1989, Díez 1993): Q(x) = C(x) · L(x), each P(value at most x).
/// </summary>
internal static class NoisyMaxLink
{
    // the delta method can ask for more spread than anything between 0 and 1 has
    const double Least = 1;

    /// <summary>P(value | only this cause, leak included).</summary>
    internal static ImmutableArray<double> Seen(ImmutableArray<double> produces, Distribution leak)
    {
        double[] l = leak.Cumulative();
        double[] c = new Distribution(produces, 0).Cumulative();
        return Differences([.. c.Zip(l, (a, b) => a * b)]);
    }

    /// <summary>
    /// P(value that the cause produces by itself): C = Q / L, made monotone. However far the jobs alone would carry it beyond 0 or 1, what
    /// the note says keeps its part, as it does in any Dirichlet: C lies within part · C_note … 1 − part · (1 − C_note).
    /// </summary>
    /// <param name="note">What a note says the cause produces; null for a link that only jobs made.</param>
    /// <param name="part">What the note weighs beside the jobs in Q, 0 … 1.</param>
    internal static Distribution Produced(Distribution seen, Distribution leak, ImmutableArray<double>? note, double part)
    {
        double[] q = seen.Cumulative();
        double[] l = leak.Cumulative();
        double[] c = [.. q.Zip(l, (a, b) => b > 0 ? a / b : 0)];
        double[] said = note is { } produces ? new Distribution(produces, 0).Cumulative() : [];
        double[] kept = [.. Monotone(c[..^1]).Select((y, x) => said.Length == 0 ? Math.Clamp(y, 0, 1) : Math.Max(part * said[x], Math.Min(y, 1 - part * (1 - said[x]))))];
        return new(Differences([.. kept, 1]), Weight(kept, l, seen.Weight, leak.Weight, 1 - part));
    }

    /// <summary>
    /// Delta method, summed over the cuts x. What jobs say comes with the leak: var C = (Q (1 − Q) / (w + 1) + C² L (1 − L) / (w_L + 1)) / L²;
    /// what the note says does not: var C = C (1 − C) / (w + 1). Mixed by f, the jobs' part.
    /// </summary>
    static double Weight(double[] c, double[] l, double seen, double leak, double f)
    {
        if (double.IsPositiveInfinity(seen)) return seen;
        double spread = 0, whole = 0;
        for (int x = 0; x < c.Length; x++)
        {
            if (l[x] <= 0) continue;
            double own = c[x] * (1 - c[x]), q = c[x] * l[x];
            spread += ((1 - f) * own + f * q * (1 - q) / (l[x] * l[x])) / (seen + 1) + f * f * c[x] * c[x] * (1 - l[x]) / l[x] / (leak + 1);
            whole += own;
        }
        return whole > 0 && spread > 0 ? Math.Min(seen, Math.Max(Least, whole / spread - 1)) : seen;
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
