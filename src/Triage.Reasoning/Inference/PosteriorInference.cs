using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Inference;

/// <summary>What is wrong, given what was seen.</summary>
public static class PosteriorInference
{
    /// <summary>
    /// The posterior of every root state. Exact, by dynamic programming over the abnormal values explained so far, where few
    /// enough of them meet (about 14); beyond that, and for nominal findings that several roots share, by hypotheses, best first,
    /// with <see cref="Posterior.LeftOut"/> bounding what is missing. Deterministic.
    /// </summary>
    /// <exception cref="ArgumentException">The network or the evidence does not make sense; says what and where.</exception>
    /// <exception cref="ArithmeticException">Too much is abnormal at once to find any explanation of it.</exception>
    public static Posterior Of(Network network, Evidence evidence)
    {
        InputCheck.Require(network, evidence);
        var compiled = EvidenceCompiler.Compile(network, evidence);
        var courses = CourseInference.Of(compiled);
        var possible = !double.IsNegativeInfinity(courses.LogTotal);
        var logTogether = compiled.LogConstant + courses.LogTotal;
        var something = SomethingIsWrong(network);
        return new Posterior
        {
            LogEvidence = network.SomethingIsWrong ? LogSum(compiled.LogAllGood, logTogether) : logTogether,
            LogEvidenceAsConditioned = network.SomethingIsWrong && possible ? logTogether - Math.Log(something) : logTogether,
            PriorSomethingIsWrong = something,
            Marginals = possible ? CourseMarginals.Sum(network, compiled, courses, c => c.State) : [],
            Remaining = possible ? CourseMarginals.Sum(network, compiled, courses, c => c.Left) : [],
            Contradiction = !possible,
            Conflict = possible ? [] : Conflicts.Of(network, evidence),
            LeftOut = courses.LeftOut,
        };
    }

    /// <summary>P(at least one root is not good), without 1 − Π: the chance that root r is the first that is not.</summary>
    internal static double SomethingIsWrong(Network network)
    {
        var (something, nothing) = (0.0, 1.0);
        foreach (var root in network.Roots)
        {
            something += nothing * root.Prior.Skip(1).Sum();
            nothing *= root.Prior[0];
        }

        return something;
    }

    private static double LogSum(double a, double b)
    {
        var (most, least) = (Math.Max(a, b), Math.Min(a, b));
        return double.IsNegativeInfinity(least) ? most : most + Math.Log(1 + Math.Exp(least - most));
    }
}
