using System.Collections.Immutable;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Inference;

/// <summary>Why evidence cannot be.</summary>
internal static class Conflicts
{
    private const int MostChecks = 3000;

    /// <summary>
    /// A smallest set of pieces of evidence that cannot stand together. First a minimal one (nothing in it can be spared) by
    /// leaving out piece by piece, observations last because people can check them; then every smaller set, smallest first, as far as <see cref="MostChecks"/> checks reach,
    /// which is always so for conflicts of up to two pieces among up to 76. Where the checks run out the set is minimal
    /// but a smaller one may exist.
    /// </summary>
    public static ImmutableArray<EvidenceItem> Of(Network network, Evidence evidence)
    {
        var all = EvidenceItems.Of(network, evidence);
        var minimal = all;
        foreach (var item in all.Reverse())
        {
            if (!Possible(minimal.Remove(item)))
            {
                minimal = minimal.Remove(item);
            }
        }

        return Enumerable.Range(0, minimal.Length)
            .SelectMany(size => Subsets(all, size))
            .Take(MostChecks)
            .FirstOrDefault(subset => !Possible(subset))
            ?.ToImmutableArray() ?? minimal;

        bool Possible(IEnumerable<EvidenceItem> kept) => IsPossible(network, evidence, [.. all.Except(kept)]);
    }

    /// <summary>Whether the evidence can happen at all, without some pieces of it.</summary>
    public static bool IsPossible(Network network, Evidence evidence, ImmutableHashSet<EvidenceItem> without) =>
        CourseInference.IsPossible(EvidenceCompiler.Compile(network, evidence, without));

    private static IEnumerable<EvidenceItem[]> Subsets(ImmutableArray<EvidenceItem> items, int size, int from = 0) =>
        size == 0
            ? [[]]
            : Enumerable.Range(from, items.Length - from)
                .SelectMany(i => Subsets(items, size - 1, i + 1).Select(rest => (EvidenceItem[])[items[i], .. rest]));
}
