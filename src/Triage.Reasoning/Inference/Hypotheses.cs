using System.Collections.Immutable;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Inference;

/// <summary>Ways things can be now.</summary>
public static class Hypotheses
{
    private const int MostNodes = 15_000;

    /// <summary>
    /// The likeliest sets of simultaneous faults after all actions. Roots that have no say in anything abnormal are summed over:
    /// a hypothesis names one only where nothing else makes the unit faulty, and then the likeliest such root that is at fault.
    /// Where the exact total is known it is used, otherwise the mass left out counts as part of the total.
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
        var masses = new Dictionary<string, (ImmutableArray<FaultyRoot> Faulty, double Mass)>();
        var found = CourseSearch.Run(compiled, plan, leaf => Add(leaf) >= most, bound, MostNodes);
        if (found.Mass <= CompiledNetwork.LeastTotal)
        {
            throw new ArgumentException(
                "The evidence contradicts itself, or is too unlikely to compute with: correct or leave out what the posterior names as its conflict.");
        }

        var total = CourseInference.HasProgramme(compiled, plan)
            ? Math.Exp(ExplanationProgramme.Total(compiled, plan))
            : found.Mass + found.LeftOut;
        return new(
            [.. masses.Values.OrderByDescending(h => h.Mass).Select(h => new Hypothesis(Math.Min(1, h.Mass / total), h.Faulty))],
            Math.Min(found.LeftOut / total, Math.Max(0, 1 - found.Mass / total)));

        int Add(Leaf leaf)
        {
            var faulty = Remaining(compiled, leaf);
            var key = string.Join(' ', faulty.Select(f => (f.Root, f.State)));
            masses[key] = (faulty, leaf.Mass + masses.GetValueOrDefault(key).Mass);
            return masses.Count;
        }
    }

    private static ImmutableArray<FaultyRoot> Remaining(CompiledNetwork compiled, Leaf leaf) =>
    [
        .. leaf.Faults
            .Select(fault => (fault.Root, Course: compiled.Roots[fault.Root].Courses[fault.Course]))
            .Where(fault => fault.Course.Remains)
            .Select(fault => new FaultyRoot(fault.Root, fault.Course.State))
            .OrderBy(fault => fault.Root),
    ];
}
