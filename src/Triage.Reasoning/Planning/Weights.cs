using System.Numerics;
using System.Runtime.InteropServices;

namespace Triage.Reasoning.Planning;

/// <summary>Arithmetic on flat arrays of weights, several at a time.</summary>
internal static class Weights
{
    /// <summary>Puts a · b into product and returns its sum.</summary>
    public static double Multiply(double[] a, double[] b, double[] product)
    {
        var wideA = Wide(a);
        var wideB = Wide(b);
        var wide = Wide(product);
        var sums = Vector<double>.Zero;
        for (var i = 0; i < wide.Length; i++)
        {
            sums += wide[i] = wideA[i] * wideB[i];
        }

        var sum = Vector.Sum(sums);
        for (var i = wide.Length * Vector<double>.Count; i < a.Length; i++)
        {
            sum += product[i] = a[i] * b[i];
        }

        return sum;
    }

    public static void Divide(double[] weights, double by)
    {
        var wide = Wide(weights);
        var divisor = new Vector<double>(by);
        for (var i = 0; i < wide.Length; i++)
        {
            wide[i] /= divisor;
        }

        for (var i = wide.Length * Vector<double>.Count; i < weights.Length; i++)
        {
            weights[i] /= by;
        }
    }

    /// <summary>Σ weight · |p − mean|.</summary>
    public static double MeanDeviation(double[] weights, double[] p, double mean)
    {
        var wide = Wide(weights);
        var wideP = Wide(p);
        var (sums, means) = (Vector<double>.Zero, new Vector<double>(mean));
        for (var i = 0; i < wide.Length; i++)
        {
            sums += wide[i] * Vector.Abs(wideP[i] - means);
        }

        var sum = Vector.Sum(sums);
        for (var i = wide.Length * Vector<double>.Count; i < p.Length; i++)
        {
            sum += weights[i] * Math.Abs(p[i] - mean);
        }

        return sum;
    }

    public static double Dot(double[] a, double[] b)
    {
        var wideA = Wide(a);
        var wideB = Wide(b);
        var sums = Vector<double>.Zero;
        for (var i = 0; i < wideA.Length; i++)
        {
            sums += wideA[i] * wideB[i];
        }

        var sum = Vector.Sum(sums);
        for (var i = wideA.Length * Vector<double>.Count; i < a.Length; i++)
        {
            sum += a[i] * b[i];
        }

        return sum;
    }

    private static Span<Vector<double>> Wide(double[] values) => MemoryMarshal.Cast<double, Vector<double>>(values.AsSpan());
}
