using System.Collections.Immutable;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Inference;

/// <summary>
/// Why evidence cannot be. Every conflict holds a piece that a largest possible set leaves over (Reiter 1987, "A theory of
/// diagnosis from first principles"): grow the pieces chosen to such a set, choose one of those left over, go on.
/// </summary>
internal sealed class Conflicts
{
    /// <summary>Checks in which a smallest conflict of three pieces is always found in practice; a large network does some hundred a second.</summary>
    private const int MostChecks = 600;

    private readonly Network _network;
    private readonly Evidence _evidence;
    private readonly EvidenceItem[] _all;
    private readonly Dictionary<string, bool> _checked = [];

    private Conflicts(Network network, Evidence evidence) =>
        (_network, _evidence, _all) = (network, evidence, [.. EvidenceItems.Of(network, evidence)]);

    /// <summary>
    /// A smallest set of pieces of evidence that cannot stand together, of observations rather than of other pieces because people
    /// can check them. Should the checks run out, a set of which nothing can be spared, but a smaller one may exist.
    /// </summary>
    public static ImmutableArray<EvidenceItem> Of(Network network, Evidence evidence)
    {
        var conflicts = new Conflicts(network, evidence);
        for (var size = 0; size < conflicts._all.Length && conflicts._checked.Count < MostChecks; size++)
        {
            if (conflicts.Search([], size) is { } smallest)
            {
                return [.. smallest.Order().Select(i => conflicts._all[i])];
            }
        }

        return conflicts.Minimal();
    }

    /// <summary>Whether the evidence can happen at all, without some pieces of it.</summary>
    public static bool IsPossible(Network network, Evidence evidence, ImmutableHashSet<EvidenceItem> without) =>
        CourseInference.IsPossible(EvidenceCompiler.Compile(network, evidence, without));

    private ImmutableArray<int>? Search(ImmutableArray<int> chosen, int more)
    {
        if (!Possible(chosen))
        {
            return chosen;
        }

        if (more == 0 || _checked.Count >= MostChecks)
        {
            return null;
        }

        foreach (var item in LeftOver(chosen).Order())
        {
            if (Search(chosen.Add(item), more - 1) is { } conflict)
            {
                return conflict;
            }
        }

        return null;
    }

    /// <summary>What cannot be added to the pieces chosen, once all else has been, as far as it goes; last pieces first.</summary>
    private List<int> LeftOver(ImmutableArray<int> chosen)
    {
        var (kept, left) = (chosen, new List<int>());
        Add([.. Enumerable.Range(0, _all.Length).Reverse().Except(chosen)]);
        return left;

        void Add(int[] items)
        {
            if (items.Length == 0 || Possible(kept.AddRange(items)))
            {
                kept = kept.AddRange(items);
            }
            else if (items.Length == 1)
            {
                left.Add(items[0]);
            }
            else
            {
                Add(items[..(items.Length / 2)]);
                Add(items[(items.Length / 2)..]);
            }
        }
    }

    private ImmutableArray<EvidenceItem> Minimal()
    {
        ImmutableArray<int> minimal = [.. Enumerable.Range(0, _all.Length)];
        foreach (var item in minimal.Reverse())
        {
            minimal = Possible(minimal.Remove(item)) ? minimal : minimal.Remove(item);
        }

        return [.. minimal.Select(i => _all[i])];
    }

    private bool Possible(ImmutableArray<int> kept)
    {
        var key = string.Join(' ', kept.Order());
        if (!_checked.TryGetValue(key, out var possible))
        {
            possible = IsPossible(_network, _evidence, [.. _all.Where((_, i) => !kept.Contains(i))]);
            _checked[key] = possible;
        }

        return possible;
    }
}
