using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>How far findings of one cause depend on each other beyond the cause, as fitted to an epoch's jobs.</summary>
/// <param name="Parents">Findings on which the others may depend, each with the same weight, chosen in advance; none while jobs do not show that it helps.</param>
/// <param name="Kappa">Pseudo-jobs by which a pair of findings leans on independence.</param>
/// <param name="Reach">Number of known findings at which evidence counts half; infinite when it is not tempered.</param>
public sealed record Dependence(ImmutableArray<string> Parents, double Kappa, double Reach)
{
    /// <summary>Findings are independent given the cause.</summary>
    public static Dependence None { get; } = new([], 1, double.PositiveInfinity);

    /// <summary>What the logarithm of a likelihood of this many findings is divided by; 1 without parents.</summary>
    public double Temperature(int known) => Parents.IsEmpty ? 1 : 1 + Math.Pow(known / Reach, 2);
}
