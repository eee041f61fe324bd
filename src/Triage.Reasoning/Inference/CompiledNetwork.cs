using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Inference;

/// <summary>
/// A network with evidence taken in: per root, what can have become of it, each with a weight that holds its prior and every
/// factor of product form; and the things that still need an explanation ("bits"), each explained by some root or by its leak.
/// P(evidence) = exp(LogConstant) · Σ over one course per root of Π weight · Π bits (1 − q_leak · Π q) · Π nominal factors.
/// </summary>
internal sealed class CompiledNetwork
{
    /// <summary>Weights are at least this where a course is possible at all; a total near it says too little to be trusted.</summary>
    public const double LeastWeight = 1e-300;

    /// <summary>Least total, after weights were normalised, that a result may rest on.</summary>
    public const double LeastTotal = 1e-285;

    public required CompiledRoot[] Roots { get; init; }

    public required Bit[] Bits { get; init; }

    /// <summary>Nominal findings that several roots have a say in; they have no product form.</summary>
    public required NominalFactor[] Nominals { get; init; }

    /// <summary>Natural logarithm of everything that no root's course changes; negative infinity when the evidence is impossible.</summary>
    public required double LogConstant { get; init; }

    /// <summary>log P(evidence, every root good); negative infinity when that is impossible.</summary>
    public required double LogAllGood { get; init; }
}

/// <summary>Courses of one root; weights sum to 1 unless all are 0.</summary>
internal sealed record CompiledRoot(Course[] Courses);

/// <summary>What can have become of a root: the state it was in, what the actions did to it, and what that explains.</summary>
/// <param name="Events">What became of the root.</param>
/// <param name="LogWeight">Logarithm of its weight; the roots' weights sum to 1.</param>
/// <param name="Effects">Bits that it may explain.</param>
/// <param name="Picks">Nominal findings that it has a say in.</param>
internal sealed record Course(CourseOfEvents Events, double LogWeight, Effect[] Effects, Pick[] Picks)
{
    /// <summary>The weight itself; what is possible does not look impossible.</summary>
    public double Weight { get; init; } = double.IsNegativeInfinity(LogWeight) ? 0 : Math.Max(Math.Exp(LogWeight), CompiledNetwork.LeastWeight);

    public int State => Events.State;

    public bool Remains => Events.Remains;

    public int Left => Events.Left;

    /// <summary>It was good and nothing needs to be said of it.</summary>
    public bool IsGood => State == 0;
}

/// <summary>
/// Something that needs an explanation: an abnormal value, "still faulty", "gone again", or that something is wrong at all.
/// </summary>
/// <param name="LeakQ">P(the leak does not explain it).</param>
/// <param name="LeakP">1 − LeakQ, without cancellation.</param>
/// <param name="Certain">Nothing but a fault explains it, and a fault that does, does so with certainty.</param>
internal readonly record struct Bit(double LeakQ, double LeakP, bool Certain);

/// <summary>A course explains a bit with chance P and leaves it unexplained with chance Q = 1 − P.</summary>
internal readonly record struct Effect(int Bit, double Q, double P);

/// <summary>A course takes part in a nominal finding with this likelihood of the value seen.</summary>
internal readonly record struct Pick(int Nominal, double Likelihood);

/// <summary>A nominal finding: the mean of the picks, or the ambient likelihood when there is none.</summary>
/// <param name="Ambient">P(value seen | no linked cause).</param>
/// <param name="Most">The largest likelihood that any combination can reach.</param>
internal readonly record struct NominalFactor(double Ambient, double Most);
