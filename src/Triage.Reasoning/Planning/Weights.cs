using System.Numerics;
using System.Runtime.InteropServices;

namespace Triage.Reasoning.Planning;

/// <summary>Arithmetic on flat arrays of weights, several at a time.</summary>
internal static class Weights
{
    /// <summary>Puts weights · by into product.</summary>
    public static void Multiply(double[] weights, double by, double[] product)
    {
        var from = Wide(weights);
        var wide = Wide(product);
        var factor = new Vector<double>(by);
        for (var i = 0; i < wide.Length; i++)
        {
            wide[i] = from[i] * factor;
        }

        for (var i = wide.Length * Vector<double>.Count; i < weights.Length; i++)
        {
            product[i] = weights[i] * by;
        }
    }

    public static double Sum(double[] weights)
    {
        var wide = Wide(weights);
        var sums = Vector<double>.Zero;
        foreach (var some in wide)
        {
            sums += some;
        }

        var sum = Vector.Sum(sums);
        for (var i = wide.Length * Vector<double>.Count; i < weights.Length; i++)
        {
            sum += weights[i];
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
