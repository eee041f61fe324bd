using System.Collections.Immutable;

namespace Triage.Reasoning.Inference;

/// <summary>
/// Enumerates sets of simultaneous faults, heaviest first, with a rigorous bound on what is left out. A node fixes the roots up
/// to the last fault it chose, the others of them good; its leaf says that no more roots of those that touch the evidence are at
/// fault. Bystanders (roots that touch no uncertain bit and no nominal finding) are summed over, except while a certain bit
/// still needs one of them. The bound of a node: its weight × the exact chance that the rest explains the bits that are hardest
/// to explain × the exact factor of every bit that no later root touches.
/// </summary>
internal sealed class CourseSearch
{
    private readonly CompiledNetwork _network;
    private readonly CompiledRoot[] _roots;
    private readonly int[] _order;
    private readonly int _touching;
    private readonly HardestBits _hardest;
    private readonly int[] _lastRoot;
    private readonly int[] _lastNominal;
    private readonly double[] _goodAfter;
    private readonly PriorityQueue<Entry, (double, int)> _queue = new();
    private int _pushed;
    private double _waiting;
    private double _summed;

    private CourseSearch(CompiledNetwork network, ExplanationPlan plan)
    {
        _network = network;
        var bystander = network.Roots.Select(IsBystander).ToArray();
        _order =
        [
            .. plan.RootOrder.Where(r => !bystander[r]),
            .. plan.RootOrder.Where(r => bystander[r]).OrderByDescending(r => 1 - Good(network.Roots[r])),
        ];
        _roots = [.. _order.Select(r => network.Roots[r])];
        _touching = bystander.Count(b => !b);
        _lastRoot = [.. network.Bits.Select((_, b) => Array.FindLastIndex(_roots, r => r.Courses.Any(c => c.Effects.Any(e => e.Bit == b))))];
        _lastNominal = [.. network.Nominals.Select((_, n) => Array.FindLastIndex(_roots, r => r.Courses.Any(c => c.Picks.Any(p => p.Nominal == n))))];
        _goodAfter = new double[_touching + 1];
        _goodAfter[_touching] = 1;
        for (var i = _touching - 1; i >= 0; i--)
        {
            _goodAfter[i] = _goodAfter[i + 1] * Good(_roots[i]);
        }

        _hardest = HardestBits.Of(network, _roots);
    }

    /// <summary>Searches until the mass left out is at most <paramref name="bound"/> of all, enough leaves are found, or the nodes are used up.</summary>
    /// <param name="enough">Whether the leaves found so far are enough; asked after each.</param>
    /// <param name="bound">Relative to the mass found and left out together.</param>
    /// <param name="mostNodes">Bounds computed at most, about.</param>
    public static FoundCourses Run(CompiledNetwork network, ExplanationPlan plan, Func<Leaf, bool> enough, double bound, int mostNodes) =>
        new CourseSearch(network, plan).Run(enough, bound, mostNodes);

    private static double Good(CompiledRoot root) => root.Courses[0].Weight;

    private bool IsBystander(CompiledRoot root) =>
        root.Courses.All(c => c.Picks.Length == 0 && c.Effects.All(e => _network.Bits[e.Bit].Certain));

    private FoundCourses Run(Func<Leaf, bool> enough, double bound, int mostNodes)
    {
        var leaves = new List<Leaf>();
        var found = 0.0;
        Push(Root());
        while (_queue.TryDequeue(out var entry, out _))
        {
            _waiting -= entry.Bound;
            if (entry.Leaf is { } leaf)
            {
                leaves.Add(leaf);
                found += leaf.Mass;
                if (enough(leaf))
                {
                    break;
                }
            }
            else
            {
                Expand(entry.Node!);
            }

            if (_pushed >= mostNodes || LeftOut() <= bound * found)
            {
                break;
            }
        }

        return new([.. leaves], found, _queue.Count == 0 ? 0 : LeftOut(), _order);
    }

    /// <summary>Summed afresh when the running sum has become small, so that no rounding of larger numbers stays in it.</summary>
    private double LeftOut()
    {
        if (_waiting < 1e-3 * _summed)
        {
            _waiting = _queue.UnorderedItems.Sum(item => item.Element.Bound);
            _summed = _waiting;
        }

        return _waiting;
    }

    private Node Root()
    {
        var unexplained = _network.Bits.Select(b => b.LeakQ).ToArray();
        var explained = _network.Bits.Select(b => b.LeakP).ToArray();
        return new Node([], 0, 1, unexplained, explained, new double[_network.Nominals.Length], new int[_network.Nominals.Length]);
    }

    private void Push(Node node)
    {
        var mass = node.Weight * Bound(node);
        if (mass > 0)
        {
            Enqueue(new Entry(mass, node, null));
        }
    }

    private void Enqueue(Entry entry)
    {
        _waiting += entry.Bound;
        _summed = Math.Max(_summed, _waiting);
        _queue.Enqueue(entry, (-entry.Bound, _pushed++));
    }

    private void Expand(Node node)
    {
        var settled = Settled(node);
        var leaf = Leaf(node, settled);
        if (leaf.Mass > 0)
        {
            Enqueue(new Entry(leaf.Mass, null, leaf));
        }

        var weight = node.Weight;
        var end = settled ? _touching : _roots.Length;
        for (var i = node.Next; i < end; i++)
        {
            for (var c = 1; c < _roots[i].Courses.Length; c++)
            {
                if (_roots[i].Courses[c].Weight > 0)
                {
                    Push(Child(node, i, c, weight));
                }
            }

            weight *= Good(_roots[i]);
            if (weight == 0)
            {
                break;
            }
        }
    }

    /// <summary>Every certain bit is explained, so that bystanders are free.</summary>
    private bool Settled(Node node)
    {
        for (var b = 0; b < _network.Bits.Length; b++)
        {
            if (_network.Bits[b].Certain && node.Unexplained[b] > 0)
            {
                return false;
            }
        }

        return true;
    }

    private Leaf Leaf(Node node, bool settled)
    {
        if (!settled)
        {
            return new Leaf(node.Faults, 0, node.Next);
        }

        var mass = node.Weight * (node.Next < _touching ? _goodAfter[node.Next] : 1);
        foreach (var explained in node.Explained)
        {
            mass *= explained;
        }

        for (var n = 0; n < _network.Nominals.Length; n++)
        {
            mass *= Nominal(node, n);
        }

        return new Leaf(node.Faults, mass, Math.Max(node.Next, _touching));
    }

    private double Nominal(Node node, int n) => node.Count[n] == 0 ? _network.Nominals[n].Ambient : node.Sum[n] / node.Count[n];

    private Node Child(Node node, int position, int course, double weight)
    {
        var chosen = _roots[position].Courses[course];
        var unexplained = node.Unexplained;
        var explained = node.Explained;
        if (chosen.Effects.Length > 0)
        {
            unexplained = [.. unexplained];
            explained = [.. explained];
            foreach (var effect in chosen.Effects)
            {
                explained[effect.Bit] += unexplained[effect.Bit] * effect.P;
                unexplained[effect.Bit] *= effect.Q;
            }
        }

        var sum = node.Sum;
        var count = node.Count;
        if (chosen.Picks.Length > 0)
        {
            sum = [.. sum];
            count = [.. count];
            foreach (var pick in chosen.Picks)
            {
                sum[pick.Nominal] += pick.Likelihood;
                count[pick.Nominal]++;
            }
        }

        return new Node(node.Faults.Add((_order[position], course)), position + 1, weight * chosen.Weight, unexplained, explained, sum, count);
    }

    private double Bound(Node node)
    {
        var bound = _hardest.Explained(node.Next, node.Unexplained, node.Explained);
        for (var b = 0; b < _lastRoot.Length; b++)
        {
            if (_lastRoot[b] < node.Next && !_hardest.Contains(b))
            {
                bound *= node.Explained[b];
            }
        }

        for (var n = 0; n < _lastNominal.Length; n++)
        {
            bound *= _lastNominal[n] < node.Next ? Nominal(node, n) : _network.Nominals[n].Most;
        }

        return bound;
    }

    /// <param name="Faults">The roots that are not good, with their courses.</param>
    /// <param name="Next">First position not decided.</param>
    private sealed record Node(
        ImmutableList<(int Root, int Course)> Faults, int Next, double Weight, double[] Unexplained, double[] Explained, double[] Sum, int[] Count);

    private readonly record struct Entry(double Bound, Node? Node, Leaf? Leaf);
}

/// <summary>One set of faults, all else good up to a position in the order and free from there.</summary>
/// <param name="Mass">Not normalised.</param>
/// <param name="Free">First position in the order whose root is summed over.</param>
internal sealed record Leaf(ImmutableList<(int Root, int Course)> Faults, double Mass, int Free);

/// <param name="Mass">Sum over the leaves.</param>
/// <param name="LeftOut">Upper bound on the mass of all other leaves.</param>
/// <param name="Order">Root at each position.</param>
internal sealed record FoundCourses(Leaf[] Leaves, double Mass, double LeftOut, int[] Order);
