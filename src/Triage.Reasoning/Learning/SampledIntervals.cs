using System.Collections.Immutable;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Learning;

/// <summary>Intervals of the probability of each fault, by fault id.</summary>
/// <param name="AtStart">Before any action.</param>
/// <param name="Remaining">After all actions.</param>
public sealed record SampledIntervals(ImmutableDictionary<string, Interval> AtStart, ImmutableDictionary<string, Interval> Remaining)
{
    /// <summary>
    /// Seeded sampling: numbers of the network are drawn from what is known of them, each draw counts by how well it foretells the
    /// evidence (importance sampling; Gelman et al., Bayesian Data Analysis, 10.4). Only numbers that the evidence touches are drawn, and
    /// of those none that is exactly known; each draw weighs the likeliest sets of faults and their neighbours, a few thousand at most,
    /// again instead of working out a posterior. Chances of actions count as exactly known.
    /// </summary>
    /// <param name="network">With the weights behind its numbers; what has none counts as exactly known.</param>
    /// <param name="evidence">Of one unit.</param>
    /// <param name="seed">Equal seeds give equal intervals.</param>
    /// <param name="draws">At least 1.</param>
    /// <param name="level">Coverage, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">The input makes no sense, or the evidence contradicts itself.</exception>
    public static SampledIntervals Of(Network network, Evidence evidence, int seed, int draws = 150, double level = 0.9)
    {
        InputCheck.Require(network, evidence);
        if (draws < 1) throw new ArgumentException($"Give at least 1 draw, not {draws}.");
        if (level is not (> 0 and < 1)) throw new ArgumentException($"An interval needs a level between 0 and 1, not {level}.");
        CompiledNetwork compiled = EvidenceCompiler.Compile(network, evidence);
        NearbyHypotheses sets = NearbyHypotheses.Of(compiled)
            ?? throw new ArgumentException("The evidence contradicts itself: correct or leave out what the posterior names as its conflict.");
        var random = new Random(seed);
        var drawing = new DrawnNetwork(network, evidence);
        (CoursePosterior Posterior, double LogWeight)[] drawn = [.. Enumerable.Range(0, draws).Select(_ => Weigh(sets, drawing.Draw(random), evidence))];
        double most = drawn.Max(d => d.LogWeight);
        double[] weights = [.. drawn.Select(d => Math.Exp(d.LogWeight - most))];
        var atStart = Intervals(course => course.State);
        return new(atStart, evidence.Actions.IsEmpty ? atStart : Intervals(course => course.Left));

        ImmutableDictionary<string, Interval> Intervals(Func<Course, int> stateOf) => PlacesOf(network, compiled, stateOf).ToImmutableDictionary(
            fault => fault.Key,
            fault => Shortest([.. drawn.Select((d, i) => (fault.Sum(at => d.Posterior.Courses[at.Root][at.Course]), weights[i]))], level * weights.Sum()),
            StringComparer.Ordinal);
    }

    static (CoursePosterior Posterior, double LogWeight) Weigh(NearbyHypotheses sets, Network drawn, Evidence evidence)
    {
        CompiledNetwork compiled = EvidenceCompiler.Compile(drawn, evidence);
        CoursePosterior posterior = sets.Under(compiled);
        double something = drawn.SomethingIsWrong ? Math.Log(PosteriorInference.SomethingIsWrong(drawn)) : 0;
        return (posterior, compiled.LogConstant + posterior.LogTotal - something);
    }

    /// <summary>The courses in which each fault is there.</summary>
    static IEnumerable<IGrouping<string, (int Root, int Course)>> PlacesOf(Network network, CompiledNetwork compiled, Func<Course, int> stateOf) =>
        compiled.Roots.SelectMany((root, r) => root.Courses.SelectMany((course, c) =>
                network.Roots[r].States[stateOf(course)].Faults.Select(fault => (Fault: fault, At: (r, c)))))
            .GroupBy(place => place.Fault, place => place.At, StringComparer.Ordinal);

    /// <summary>
    /// The shortest interval with that much weight, an estimate of highest density (Chen and Shao 1999); one that begins with the smallest
    /// draw begins at 0, one that ends with the largest ends at 1.
    /// </summary>
    static Interval Shortest((double Chance, double Weight)[] draws, double weight)
    {
        (double Chance, double Weight)[] sorted = [.. draws.OrderBy(draw => draw.Chance)];
        if (sorted[0].Chance == sorted[^1].Chance) return new(sorted[0].Chance, sorted[0].Chance);
        var best = (First: 0, Last: sorted.Length - 1);
        double inside = 0;
        for (int first = 0, last = -1; ; inside -= sorted[first++].Weight)
        {
            while (inside < weight && last + 1 < sorted.Length) inside += sorted[++last].Weight;
            if (inside < weight) break;
            if (sorted[last].Chance - sorted[first].Chance < sorted[best.Last].Chance - sorted[best.First].Chance) best = (first, last);
        }
        return new(best.First == 0 ? 0 : sorted[best.First].Chance, best.Last == sorted.Length - 1 ? 1 : sorted[best.Last].Chance);
    }
}
