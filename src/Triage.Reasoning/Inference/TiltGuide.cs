namespace Triage.Reasoning.Inference;

/// <summary>
/// Bounds of product form on all bits being explained at once: with x = −log P(not explained), which adds up over causes,
/// 1 − exp(−x) ≤ exp(λ x − f*(λ)) for every λ > 0, f*(λ) = (λ + 1) log(λ + 1) − λ log λ (Jaakkola &amp; Jordan 1999, variational
/// bounds for two-layer noisy-OR). Causes are capped at x = f*(λ) / λ, where the bound has reached 1. Every node gets λ of its
/// own, near where its bound is tightest; a bit that no later root explains counts as it is.
/// </summary>
internal sealed class TiltGuide : ISearchGuide
{
    private const int RoundsAtFirst = 40, RoundsAfter = 4;
    private const double Least = 1e-6, Most = 1e3;

    private readonly SearchSpace _space;
    private readonly double[][][] _x;
    private readonly int[] _lastExplainer;
    private readonly double[] _cap;
    private readonly double[] _mean;
    private readonly double[] _logSum;
    private readonly double[][] _tilt;
    private readonly double[] _weight;

    public TiltGuide(SearchSpace space)
    {
        _space = space;
        var bits = space.Network.Bits.Length;
        _x = Array.ConvertAll(space.Roots, r => Array.ConvertAll(r.Courses, c => Array.ConvertAll(c.Effects, e => -Math.Log(e.Q))));
        _lastExplainer = new int[bits];
        Array.Fill(_lastExplainer, -1);
        for (var i = 0; i < space.Roots.Length; i++)
        {
            foreach (var effect in space.Roots[i].Courses.Where(c => c.Weight > 0).SelectMany(c => c.Effects))
            {
                _lastExplainer[effect.Bit] = i;
            }
        }

        (_cap, _mean, _logSum) = (new double[bits], new double[bits], new double[space.Roots.Length + 1]);
        _tilt = Array.ConvertAll(space.Roots, r => new double[r.Courses.Length]);
        _weight = new double[space.Roots.Max(r => r.Courses.Length)];
        var state = new SearchState(space.Network);
        state.Set([]);
        Hint = [.. Enumerable.Repeat(1.0, bits)];
        LogAll = Tighten(Hint, state, 0, RoundsAtFirst) + _logSum[0] + space.LogNominals(state, space.Roots[0].Courses[0], 0);
    }

    public double LogAll { get; }

    public bool IsExact => false;

    /// <summary>λ of each bit near where the bound on everything is tightest.</summary>
    private double[] Hint { get; }

    public (double Unlisted, double[]? Hint) Branches(SearchNode node, SearchState state, double least, List<Branch> branches)
    {
        double[] lambda = [.. node.Hint ?? Hint];
        var log = node.LogWeight + Tighten(lambda, state, node.Next, RoundsAfter);
        var (unlisted, goods) = (0.0, 0.0);
        for (var i = node.Next; i < _space.End(state); i++)
        {
            var courses = _space.Roots[i].Courses;
            for (var c = 1; c < courses.Length; c++)
            {
                var bound = log + goods + _tilt[i][c] + _logSum[i + 1] + _space.LogNominals(state, courses[c], i + 1);
                if (Math.Exp(bound - LogAll) is var mass && mass <= least)
                {
                    unlisted += mass;
                }
                else
                {
                    branches.Add(new Branch(i, c, node.LogWeight + goods + courses[c].LogWeight, bound));
                }
            }

            goods += courses[0].LogWeight;
        }

        return (unlisted, lambda);
    }

    /// <summary>
    /// Moves λ towards the tightest bound, λ = 1 / (exp(x) − 1) at the tilted mean of x, and leaves the tilted weights behind.
    /// Returns the log of the part of the bound that no later root has a say in.
    /// </summary>
    private double Tighten(double[] lambda, SearchState state, int next, int rounds)
    {
        for (var round = 0; round < rounds; round++)
        {
            Tilt(lambda, state, next);
            for (var b = 0; b < lambda.Length; b++)
            {
                lambda[b] = Math.Sqrt(lambda[b] * Math.Clamp(1 / (Math.Exp(_mean[b]) - 1), Least, Most));
            }
        }

        return Tilt(lambda, state, next);
    }

    private double Tilt(double[] lambda, SearchState state, int next)
    {
        var decided = 0.0;
        for (var b = 0; b < lambda.Length; b++)
        {
            var conjugate = (lambda[b] + 1) * Math.Log(lambda[b] + 1) - lambda[b] * Math.Log(lambda[b]);
            _cap[b] = conjugate / lambda[b];
            _mean[b] = Math.Min(-Math.Log(state.Unexplained[b]), _cap[b]);
            decided += _lastExplainer[b] < next ? Math.Log(state.Explained[b]) : lambda[b] * _mean[b] - conjugate;
        }

        _logSum[^1] = 0;
        for (var i = _space.Roots.Length - 1; i >= next; i--)
        {
            _logSum[i] = _logSum[i + 1] + TakeRoot(i, lambda, next);
        }

        return decided;
    }

    /// <summary>Log of the sum over the root's tilted weights; adds its tilted mean to that of x.</summary>
    private double TakeRoot(int i, double[] lambda, int next)
    {
        var (courses, tilt, sum) = (_space.Roots[i].Courses, _tilt[i], 0.0);
        for (var c = 0; c < courses.Length; c++)
        {
            var (effects, x, log) = (courses[c].Effects, _x[i][c], courses[c].LogWeight);
            for (var e = 0; e < effects.Length; e++)
            {
                var bit = effects[e].Bit;
                log += _lastExplainer[bit] < next ? 0 : lambda[bit] * Math.Min(x[e], _cap[bit]);
            }

            tilt[c] = log;
            _weight[c] = Math.Exp(log);
            sum += _weight[c];
        }

        for (var c = 0; c < courses.Length; c++)
        {
            var (effects, x, share) = (courses[c].Effects, _x[i][c], _weight[c] / sum);
            for (var e = 0; e < effects.Length && share > 1e-12; e++)
            {
                _mean[effects[e].Bit] += share * Math.Min(x[e], _cap[effects[e].Bit]);
            }
        }

        return Math.Log(sum);
    }
}
