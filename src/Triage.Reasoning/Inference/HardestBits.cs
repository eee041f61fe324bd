namespace Triage.Reasoning.Inference;

/// <summary>
/// The exact chance that the roots from some position on explain the few bits that are hardest to explain, given how far earlier
/// roots have explained them. Dropping the other bits can only raise a chance: an upper bound for all of them.
/// </summary>
internal sealed class HardestBits
{
    private const int Most = 8;

    private readonly int[] _bits;
    private readonly double[][] _after;
    private readonly double[] _scratch;

    private HardestBits(int[] bits, double[][] after) => (_bits, _after, _scratch) = (bits, after, new double[1 << bits.Length]);

    /// <summary>The bits that are hardest to explain.</summary>
    public static int[] Choose(CompiledNetwork network, CompiledRoot[] roots) =>
        [
            .. Enumerable.Range(0, network.Bits.Length)
                .OrderBy(b => roots.Aggregate(network.Bits[b].LeakP, (p, root) => p + (1 - p) * Chance(root, b)))
                .Take(Most),
        ];

    /// <param name="bits">Which bits to treat exactly.</param>
    /// <param name="roots">In their order.</param>
    /// <param name="factor">A factor on the weight of each course, such as a bound on its part in the other bits.</param>
    public static HardestBits Of(int[] bits, CompiledRoot[] roots, Func<Course, double> factor)
    {
        var after = new double[roots.Length + 1][];
        after[^1] = new double[1 << bits.Length];
        after[^1][^1] = 1;
        for (var i = roots.Length - 1; i >= 0; i--)
        {
            after[i] = Before(roots[i], bits, after[i + 1], factor);
        }

        return new(bits, after);
    }

    /// <summary>Σ over masks of P(mask) · P(the roots from <paramref name="position"/> on explain the rest).</summary>
    public double Explained(int position, double[] unexplained, double[] explained)
    {
        var f = _scratch.AsSpan();
        _after[position].CopyTo(f);
        for (var i = _bits.Length - 1; i >= 0; i--)
        {
            var half = 1 << i;
            var (q, p) = (unexplained[_bits[i]], explained[_bits[i]]);
            BitVector.Mix(f[..half], f.Slice(half, half), q, p);
        }

        return f[0];
    }

    private static double Chance(CompiledRoot root, int bit) =>
        root.Courses.Sum(c => c.Weight * c.Effects.Where(e => e.Bit == bit).Sum(e => e.P));

    private static double[] Before(CompiledRoot root, int[] bits, double[] after, Func<Course, double> factor)
    {
        var before = new double[after.Length];
        foreach (var course in root.Courses)
        {
            double[] moved = [.. after];
            foreach (var effect in course.Effects)
            {
                var position = Array.IndexOf(bits, effect.Bit);
                if (position >= 0)
                {
                    BitVector.ExpectExplained(moved, position, effect.Q, effect.P);
                }
            }

            BitVector.AddScaled(before, moved, course.Weight * factor(course));
        }

        return before;
    }
}
