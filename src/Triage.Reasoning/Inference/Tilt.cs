namespace Triage.Reasoning.Inference;

/// <summary>
/// A bound of product form on several bits being explained at once: with x = −log P(not explained), which adds up over causes,
/// 1 − exp(−x) ≤ exp(λ x − f*(λ)) for every λ > 0, f*(λ) = (λ + 1) log(λ + 1) − λ log λ (Jaakkola &amp; Jordan 1999, variational
/// bounds for two-layer noisy-OR). Causes are capped at x = f*(λ) / λ, where the bound has reached 1.
/// </summary>
internal sealed class Tilt
{
    private const int Rounds = 30;

    private readonly double[] _lambda;
    private readonly double[] _conjugate;

    private Tilt(double[] lambda)
    {
        _lambda = lambda;
        _conjugate = [.. lambda.Select(l => (l + 1) * Math.Log(l + 1) - l * Math.Log(l))];
    }

    /// <summary>λ of each bit near where the bound on all of them together is tightest: λ = 1 / (exp(x) − 1) at the tilted mean of x.</summary>
    public static Tilt Of(CompiledNetwork network, CompiledRoot[] roots)
    {
        var tilt = new Tilt([.. network.Bits.Select(_ => 1.0)]);
        for (var round = 0; round < Rounds; round++)
        {
            var mean = tilt.MeanOfX(network, roots);
            tilt = new Tilt([.. tilt._lambda.Select((l, b) => Math.Sqrt(l * Math.Clamp(1 / (Math.Exp(mean[b]) - 1), 1e-6, 1e6)))]);
        }

        return tilt;
    }

    /// <summary>What a course, or all that is decided, adds to the bound of a bit that it leaves unexplained with chance q.</summary>
    public double Factor(int bit, double q) => Math.Exp(_lambda[bit] * X(bit, q));

    /// <summary>The bound of a bit while nothing can explain it.</summary>
    public double Start(int bit) => Math.Exp(-_conjugate[bit]);

    private double X(int bit, double q) => Math.Min(q > 0 ? -Math.Log(q) : double.PositiveInfinity, _conjugate[bit] / _lambda[bit]);

    private double[] MeanOfX(CompiledNetwork network, CompiledRoot[] roots)
    {
        var mean = network.Bits.Select((bit, b) => X(b, bit.LeakQ)).ToArray();
        foreach (var root in roots.Where(r => r.Courses.Any(c => c.Effects.Length > 0)))
        {
            var weights = root.Courses.Select(c => c.Effects.Aggregate(c.Weight, (w, e) => w * Factor(e.Bit, e.Q))).ToArray();
            var sum = weights.Sum();
            for (var c = 0; c < weights.Length && sum > 0; c++)
            {
                foreach (var effect in root.Courses[c].Effects)
                {
                    mean[effect.Bit] += weights[c] / sum * X(effect.Bit, effect.Q);
                }
            }
        }

        return mean;
    }
}
