using System.Numerics;

namespace Triage.Reasoning.Inference;

/// <summary>
/// Arithmetic on vectors indexed by masks of explained bits. Everything added is positive, so nothing cancels.
/// </summary>
internal static class BitVector
{
    /// <summary>What is unexplained becomes explained with chance p, at one position: new[m|b] = f[m|b] + p f[m], new[m] = q f[m].</summary>
    public static void Explain(Span<double> f, int position, double q, double p)
    {
        var stride = 1 << position;
        for (var start = 0; start < f.Length; start += 2 * stride)
        {
            var without = f.Slice(start, stride);
            AddScaled(f.Slice(start + stride, stride), without, p);
            Scale(without, q);
        }
    }

    /// <summary>The transpose of <see cref="Explain"/>: new[m] = q f[m] + p f[m|b], new[m|b] = f[m|b].</summary>
    public static void ExpectExplained(Span<double> f, int position, double q, double p)
    {
        var stride = 1 << position;
        for (var start = 0; start < f.Length; start += 2 * stride)
        {
            Mix(f.Slice(start, stride), f.Slice(start + stride, stride), q, p);
        }
    }

    /// <summary>to = q · to + p · from.</summary>
    public static void Mix(Span<double> to, ReadOnlySpan<double> from, double q, double p)
    {
        var i = 0;
        for (; i <= to.Length - Vector<double>.Count; i += Vector<double>.Count)
        {
            (new Vector<double>(to[i..]) * q + new Vector<double>(from[i..]) * p).CopyTo(to[i..]);
        }

        for (; i < to.Length; i++)
        {
            to[i] = q * to[i] + p * from[i];
        }
    }

    private static void Scale(Span<double> f, double scale)
    {
        var i = 0;
        for (; i <= f.Length - Vector<double>.Count; i += Vector<double>.Count)
        {
            (new Vector<double>(f[i..]) * scale).CopyTo(f[i..]);
        }

        for (; i < f.Length; i++)
        {
            f[i] *= scale;
        }
    }

    /// <summary>to += scale · from.</summary>
    public static void AddScaled(Span<double> to, ReadOnlySpan<double> from, double scale)
    {
        var i = 0;
        for (; i <= to.Length - Vector<double>.Count; i += Vector<double>.Count)
        {
            (new Vector<double>(to[i..]) + new Vector<double>(from[i..]) * scale).CopyTo(to[i..]);
        }

        for (; i < to.Length; i++)
        {
            to[i] += scale * from[i];
        }
    }

    public static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var sums = Vector<double>.Zero;
        var i = 0;
        for (; i <= a.Length - Vector<double>.Count; i += Vector<double>.Count)
        {
            sums += new Vector<double>(a[i..]) * new Vector<double>(b[i..]);
        }

        var sum = Vector.Sum(sums);
        for (; i < a.Length; i++)
        {
            sum += a[i] * b[i];
        }

        return sum;
    }

    /// <summary>Scales so that the largest entry is 1; returns the logarithm of the factor taken out, negative infinity for an all-zero vector.</summary>
    public static double Normalise(Span<double> f)
    {
        var top = 0.0;
        foreach (var x in f)
        {
            top = Math.Max(top, x);
        }

        foreach (ref var x in f)
        {
            x = top > 0 ? x / top : 0;
        }

        return Math.Log(top);
    }

    /// <summary>Inserts a bit at a position: each entry becomes two, with these shares.</summary>
    public static void Open(ReadOnlySpan<double> from, Span<double> to, int position, double without, double with)
    {
        var low = (1 << position) - 1;
        for (var m = 0; m < from.Length; m++)
        {
            var at = ((m & ~low) << 1) | (m & low);
            to[at] = without * from[m];
            to[at + low + 1] = with * from[m];
        }
    }

    /// <summary>Removes a bit: each entry is the weighted sum of its two; also the transpose of <see cref="Open"/>.</summary>
    public static void Close(ReadOnlySpan<double> from, Span<double> to, int position, double without, double with)
    {
        var low = (1 << position) - 1;
        for (var m = 0; m < to.Length; m++)
        {
            var at = ((m & ~low) << 1) | (m & low);
            to[m] = without * from[at] + with * from[at + low + 1];
        }
    }
}
