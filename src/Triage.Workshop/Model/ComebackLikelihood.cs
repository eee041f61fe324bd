using Triage.Reasoning.Networks;

namespace Triage.Workshop.Model;

/// <summary>A mend after which the machine worked for a while: the fault it is for may be back, or it was chance, and something else is wrong.</summary>
internal static class ComebackLikelihood
{
    /// <summary>
    /// Of mends of the right fault one in thirty comes back; with another fault one machine in a hundred works for a while all the same, because leads and
    /// joints were moved, or it dried, or rested (common practice, no source).
    /// </summary>
    private const double Back = 1.0 / 30, ByChance = 0.01;

    public static IEnumerable<RootLikelihood> Of(Network network, IEnumerable<Clearing> mended, int epoch) =>
        mended.GroupBy(c => c.Root).Select(root =>
        {
            var meant = root.Select(c => c.State).ToHashSet();
            return new RootLikelihood(root.Key, [.. network.Roots[root.Key].States.Select((_, s) => meant.Contains(s) ? Back : ByChance)], epoch);
        });

    /// <summary>The same as a thing done that changed nothing for good; done again it is a new try.</summary>
    public static ActionTaken Undone(ActionTaken mend) => new($"{mend.Id}, did not last", [], ActionOutcome.NotSeen);
}
