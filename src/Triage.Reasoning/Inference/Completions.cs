namespace Triage.Reasoning.Inference;

/// <summary>Before each step of a plan, the chance that what follows explains the rest, by mask of the bits explained so far.</summary>
internal sealed class Completions
{
    private readonly double[][] _before;
    private readonly double[] _logScale;

    private Completions(double[][] before, double[] logScale) => (_before, _logScale) = (before, logScale);

    /// <summary>Log of the mass of everything, without the network's constant; negative infinity when it is too small to compute with.</summary>
    public double LogAll => _before[0][0] > CompiledNetwork.LeastTotal ? _logScale[0] + Math.Log(_before[0][0]) : double.NegativeInfinity;

    public (double[] Vector, double LogScale) this[int step] => (_before[step], _logScale[step]);

    public static Completions Of(CompiledNetwork network, ExplanationPlan plan)
    {
        var steps = plan.Steps;
        var (before, logScale, moves) = (new double[steps.Count + 1][], new double[steps.Count + 1], new CourseMoves(network));
        before[^1] = [1];
        for (var i = steps.Count - 1; i >= 0; i--)
        {
            var vector = new double[1 << steps[i].Open.Length];
            logScale[i] = logScale[i + 1] + moves.Backward(steps[i], before[i + 1], vector);
            before[i] = vector;
        }

        return new(before, logScale);
    }
}
