using Triage.Reasoning.Networks;

namespace Triage.Workshop.Model;

/// <summary>The old part went back in: the fault returned with it, or it stayed away.</summary>
internal static class SwapLikelihood
{
    /// <summary>Chance that the fault returns with a good part, or stays away with a bad one: contact disturbed by the swap (common practice, no source).</summary>
    private const double ByChance = 0.05;

    public static IEnumerable<RootLikelihood> Of(Network network, IEnumerable<Clearing> swapped, bool faultReturned, int epoch) =>
        swapped.GroupBy(c => c.Root).Select(root =>
        {
            var bad = root.Select(c => c.State).ToHashSet();
            return new RootLikelihood(
                root.Key,
                [.. network.Roots[root.Key].States.Select((_, s) => bad.Contains(s) == faultReturned ? 1 - ByChance : ByChance)],
                epoch);
        });
}
