namespace Triage.Reasoning.Learning;

/// <summary>One step of a hierarchy: what was counted there, and how many pseudo-jobs the step above counts for.</summary>
internal readonly record struct Step(double[] Counts, double Kappa);

/// <summary>
/// A chain of Dirichlet–multinomial steps from the most general to the most special. The prior with its own weight is
/// updated by <paramref name="First"/>; each further step is pooled towards the one above it. A job counts at every step.
/// </summary>
internal sealed record Hierarchy(Distribution Prior, double[] First, IReadOnlyList<Step> Steps)
{
    internal Distribution Last => Steps.Aggregate(Prior.Updated(First), (above, step) => above.Child(step.Counts, step.Kappa));

    /// <summary>
    /// The step above the last as the other members see it, without the last step's own counts;
    /// null when there are no others, who alone can say how much members differ.
    /// </summary>
    internal Distribution? AboveWithoutLast()
    {
        double[] own = Steps[^1].Counts;
        double[] others = Less(Steps.Count > 1 ? Steps[^2].Counts : First, own);
        if (others.Sum() <= 0) return null;
        return (this with
        {
            First = Less(First, own),
            Steps = [.. Steps.SkipLast(1).Select(step => step with { Counts = Less(step.Counts, own) })],
        }).Last;
    }

    static double[] Less(double[] all, double[] own) => [.. all.Zip(own, (a, o) => Math.Max(0, a - o))];
}
