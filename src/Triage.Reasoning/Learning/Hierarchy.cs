using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>One step of a hierarchy: what its members tell of it, and how many pseudo-jobs the step above counts for.</summary>
internal readonly record struct Step(double[] Counts, double Kappa);

/// <summary>
/// A chain of Dirichlet–multinomial steps from the most general to the most special. The prior with its own weight is
/// updated by <paramref name="First"/>; each further step is pooled towards the one above it. A job counts at every step,
/// upwards for less (<see cref="LevelTree"/>).
/// </summary>
internal sealed record Hierarchy(Distribution Prior, double[] First, IReadOnlyList<Step> Steps)
{
    /// <summary>A prior that is exactly known is not pooled with anything.</summary>
    /// <param name="levels">From the most special to the most general.</param>
    internal static Hierarchy Of(Distribution prior, LevelTree tree, ImmutableArray<string> levels) =>
        new(prior, tree.Effective(TallyKey.Everywhere, 0), double.IsPositiveInfinity(prior.Weight)
            ? []
            : [.. levels.Reverse().Select((level, depth) => new Step(tree.Effective(level, depth + 1), tree.Kappa(depth)))]);

    internal Distribution Last => Steps.Aggregate(Prior.Updated(First), (above, step) => above.Child(step.Counts, step.Kappa));

    /// <summary>Coefficient of the prior in the last mean, 0 … 1; the rest is counts.</summary>
    internal double PriorPart => double.IsPositiveInfinity(Prior.Weight) ? 1
        : Steps.Aggregate(Part(Prior.Weight, First), (part, step) => part * Part(step.Kappa, step.Counts));

    /// <summary>
    /// The step above the last as the other members see it, without the last step's own counts;
    /// null when there are no others, who alone can say how much members differ.
    /// </summary>
    internal Distribution? AboveWithoutLast()
    {
        double[][] levels = [First, .. Steps.Select(step => step.Counts)];
        double[] gone = new double[First.Length];
        for (int i = levels.Length - 2; i >= 0; i--)
        {
            double kappa = Steps[i].Kappa;
            double[] before = LevelTree.Told(levels[i + 1], kappa), after = LevelTree.Told(gone, kappa);
            levels[i + 1] = gone;
            gone = [.. levels[i].Select((count, v) => Math.Max(0, count - before[v] + after[v]))];
            if (i == levels.Length - 2 && gone.Sum() <= 1e-9) return null;
        }
        return (this with { First = gone, Steps = [.. Steps.SkipLast(1).Select((step, i) => step with { Counts = levels[i + 1] })] }).Last;
    }

    static double Part(double pseudo, double[] counts) => counts.Sum() is var seen && (seen == 0 || double.IsPositiveInfinity(pseudo)) ? 1 : pseudo / (pseudo + seen);
}
