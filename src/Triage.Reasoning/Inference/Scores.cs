namespace Triage.Reasoning.Inference;

/// <summary>Sparse vector of ∂ log w / ∂ logit θ by parameter, each with var logit θ.</summary>
internal sealed class Scores
{
    /// <summary>
    /// Half a count on each side (Anscombe, "On estimating binomial response relations", Biometrika 43, 1956): without it the logit of a
    /// chance that hardly any count stands behind has all but infinite variance, and one such chance drowns every interval.
    /// </summary>
    private const double Half = 0.5;

    private readonly Dictionary<Parameter, (double Score, double Variance)> _of = [];

    /// <summary>What is not exactly known and has a say, with var logit θ.</summary>
    public IEnumerable<(Parameter Parameter, double Variance)> Parameters => _of.Select(p => (p.Key, p.Value.Variance));

    public double this[Parameter parameter] => _of.GetValueOrDefault(parameter).Score;

    /// <param name="parameter">What is not exactly known; equal keys are one parameter.</param>
    /// <param name="score">∂ log w / ∂ logit θ, up to a constant that all hypotheses share.</param>
    /// <param name="a">First count of its Beta; infinite when exactly known.</param>
    /// <param name="b">Second count.</param>
    public void Add(Parameter parameter, double score, double a, double b)
    {
        if (score != 0 && a > 0 && b > 0 && double.IsFinite(a) && double.IsFinite(b))
        {
            _of[parameter] = (_of.GetValueOrDefault(parameter).Score + score, Trigamma(a + Half) + Trigamma(b + Half));
        }
    }

    public void Add(Scores other, double scale)
    {
        foreach (var (parameter, (score, variance)) in other._of)
        {
            _of[parameter] = (_of.GetValueOrDefault(parameter).Score + scale * score, variance);
        }
    }

    /// <summary>ψ₁: recurrence to x ≥ 10, then the asymptotic series (Abramowitz &amp; Stegun 1964, 6.4.6 and 6.4.12).</summary>
    internal static double Trigamma(double x)
    {
        var sum = 0.0;
        for (; x < 10; x++)
        {
            sum += 1 / (x * x);
        }

        var y = 1 / (x * x);
        return sum + 1 / x + y / 2 + y / x * (1.0 / 6 - y * (1.0 / 30 - y * (1.0 / 42 - y * (1.0 / 30 - y * 5 / 66))));
    }
}
