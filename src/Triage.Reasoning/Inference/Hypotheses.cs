using System.Collections.Immutable;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Inference;

/// <summary>Ways things can be now.</summary>
public static class Hypotheses
{
    private const int Work = 50_000;

    /// <summary>
    /// The likeliest sets of simultaneous faults after all actions. Roots that have no say in anything abnormal are summed over:
    /// a hypothesis names one only where nothing else makes the unit faulty, and then the likeliest such root that is at fault.
    /// Where the exact total is not known the mass left out counts as part of the total.
    /// </summary>
    /// <param name="network">The network.</param>
    /// <param name="evidence">What was seen and done.</param>
    /// <param name="most">Hypotheses listed at most.</param>
    /// <param name="bound">Mass left out that is small enough to stop at.</param>
    /// <exception cref="ArgumentException">The input makes no sense, or the evidence contradicts itself.</exception>
    public static HypothesisSet Of(Network network, Evidence evidence, int most = 2000, double bound = 1e-6)
    {
        InputCheck.Require(network, evidence);
        var compiled = EvidenceCompiler.Compile(network, evidence);
        var plan = ExplanationPlan.Of(compiled);
        var found = CourseSearch.Run(compiled, plan, new(Work, bound) { Wanted = most });
        if (found.Leaves.Length == 0)
        {
            throw new ArgumentException(
                "The evidence contradicts itself, or is too entangled to compute with: correct or leave out what the posterior names as its conflict.");
        }

        var total = found.Mass + found.LeftOut;
        var listed = found.Leaves
            .Select(leaf => (Faulty: Remaining(compiled, leaf), leaf.Mass))
            .GroupBy(h => string.Join(' ', h.Faulty.Select(f => (f.Root, f.State))))
            .Select(same => new Hypothesis(Math.Min(1, same.Sum(h => h.Mass) / total), same.First().Faulty))
            .OrderByDescending(h => h.Probability)
            .ToList();
        var unlisted = listed.Skip(most).Sum(h => h.Probability);
        return new([.. listed.Take(most)], Math.Min(1, found.LeftOut / total + unlisted));
    }

    private static ImmutableArray<FaultyRoot> Remaining(CompiledNetwork compiled, Leaf leaf) =>
    [
        .. leaf.Faults
            .Select(fault => (fault.Root, Course: compiled.Roots[fault.Root].Courses[fault.Course]))
            .Where(fault => fault.Course.Remains)
            .Select(fault => new FaultyRoot(fault.Root, fault.Course.Left))
            .OrderBy(fault => fault.Root),
    ];
}
