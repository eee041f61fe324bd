using System.Collections.Immutable;

namespace Triage.Reasoning.Inference;

/// <summary>One ordered value within its cumulative.</summary>
/// <param name="AtMost">C(x): P(at most x).</param>
/// <param name="Q">C(x − 1) / C(x): P(less than x | at most x).</param>
/// <param name="P">P(x | at most x).</param>
internal readonly record struct Share(double AtMost, double Q, double P)
{
    /// <summary>C(x) of the highest value is exactly 1; a cumulative of 0 has Q = 1, P = 0.</summary>
    public static Share Of(ImmutableArray<double> produces, int value)
    {
        var below = 0.0;
        for (var x = 0; x < value; x++)
        {
            below += produces[x];
        }

        var atMost = value == produces.Length - 1 ? 1 : below + produces[value];
        return atMost > 0 ? new(atMost, below / atMost, produces[value] / atMost) : new(0, 1, 0);
    }
}
