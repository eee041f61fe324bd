using System.Buffers;

namespace Triage.Reasoning.Inference;

/// <summary>
/// Exact inference by dynamic programming over masks of the bits explained so far, root by root, forward and backward:
/// F[m] = P(the roots so far, and they explain exactly m), B[m] = P(the rest is explained | m so far). The weight of a
/// course of a root is F · course · B. All terms are positive, unlike in quickscore's signed sum (Heckerman 1989).
/// </summary>
internal sealed class ExplanationProgramme
{
    private static readonly double LogLeastTotal = Math.Log(CompiledNetwork.LeastTotal);

    private readonly CompiledNetwork _network;
    private readonly IReadOnlyList<Step> _steps;
    private readonly double[]?[] _before;
    private readonly CourseMoves _moves;

    private ExplanationProgramme(CompiledNetwork network, ExplanationPlan plan)
    {
        _network = network;
        _steps = plan.Steps;
        _before = new double[]?[_steps.Count];
        _moves = new CourseMoves(network);
    }

    /// <summary>The posterior of every course; none when the total is 0.</summary>
    public static CoursePosterior Run(CompiledNetwork network, ExplanationPlan plan) => Run(network, plan, programme =>
    {
        var logTotal = programme.Forward();
        return new CoursePosterior(logTotal, double.IsNegativeInfinity(logTotal) ? [] : programme.Backward(), 0);
    });

    /// <summary>Log of the total over all courses alone, without <see cref="CompiledNetwork.LogConstant"/>.</summary>
    public static double Total(CompiledNetwork network, ExplanationPlan plan) => Run(network, plan, programme => programme.Forward());

    private static T Run<T>(CompiledNetwork network, ExplanationPlan plan, Func<ExplanationProgramme, T> run)
    {
        var programme = new ExplanationProgramme(network, plan);
        try
        {
            return run(programme);
        }
        finally
        {
            foreach (var rented in programme._before.OfType<double[]>())
            {
                ArrayPool<double>.Shared.Return(rented);
            }
        }
    }

    private double Forward()
    {
        double[] f = [1];
        var log = 0.0;
        for (var i = 0; i < _steps.Count; i++)
        {
            var step = _steps[i];
            var size = 1 << step.Open.Length;
            switch (step.Kind)
            {
                case StepKind.Open:
                    var opened = new double[2 * size];
                    BitVector.Open(f, opened, step.Position, _network.Bits[step.Index].LeakQ, _network.Bits[step.Index].LeakP);
                    f = opened;
                    break;
                case StepKind.Close:
                    var closed = new double[size / 2];
                    BitVector.Close(f, closed, step.Position, 0, 1);
                    var scale = BitVector.Normalise(closed);
                    if (!(scale > LogLeastTotal))
                    {
                        return double.NegativeInfinity;
                    }

                    log += scale;
                    f = closed;
                    break;
                case StepKind.Root:
                    var saved = ArrayPool<double>.Shared.Rent(size);
                    f.CopyTo(saved, 0);
                    _before[i] = saved;
                    _moves.Forward(step, saved.AsSpan(0, size), f);
                    break;
            }
        }

        return f[0] > CompiledNetwork.LeastTotal ? log + Math.Log(f[0]) : double.NegativeInfinity;
    }

    private double[][] Backward()
    {
        var posterior = new double[_network.Roots.Length][];
        double[] b = [1];
        for (var i = _steps.Count - 1; i >= 0; i--)
        {
            var step = _steps[i];
            var before = new double[1 << step.Open.Length];
            if (step.Kind == StepKind.Root)
            {
                posterior[step.Index] = Shares(step, _before[i].AsSpan(0, before.Length), b, before);
            }
            else
            {
                _moves.Backward(step, b, before);
            }

            b = before;
        }

        return posterior;
    }

    private double[] Shares(Step step, ReadOnlySpan<double> soFar, ReadOnlySpan<double> after, Span<double> before)
    {
        var courses = _network.Roots[step.Index].Courses;
        var weights = new double[courses.Length];
        var total = 0.0;
        for (var c = 0; c < courses.Length; c++)
        {
            weights[c] = _moves.Backward(step, courses[c], soFar, after, before);
            total += weights[c];
        }

        for (var c = 0; c < courses.Length; c++)
        {
            weights[c] /= total;
        }

        return weights;
    }
}

/// <summary>Posterior of every course of every root.</summary>
/// <param name="LogTotal">Log of the total weight, without the network's constant.</param>
/// <param name="Courses">By root and course; each root's sum to 1. Empty when the total is 0.</param>
/// <param name="LeftOut">Upper bound on the posterior mass that is not in here.</param>
internal sealed record CoursePosterior(double LogTotal, double[][] Courses, double LeftOut);
