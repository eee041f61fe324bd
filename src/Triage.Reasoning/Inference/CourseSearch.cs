namespace Triage.Reasoning.Inference;

/// <summary>
/// Enumerates sets of simultaneous faults, heaviest first, with a rigorous bound on what is left out. A node fixes the roots up
/// to the last fault it chose, the others of them good. Its leaf says that no later root that touches the evidence is at fault;
/// its rest says that some is. Bystanders (roots that touch no uncertain bit and no nominal finding) are summed over, except
/// while a certain bit still needs one of them.
/// </summary>
internal sealed class CourseSearch
{
    /// <summary>Rounding of a bound, relative; added wherever a leaf is taken out of one.</summary>
    private const double Rounding = 1e-14;

    private readonly SearchSpace _space;
    private readonly PriorityQueue<Entry, double> _queue = new();
    private readonly List<Leaf> _leaves = [];
    private readonly Func<Leaf, bool> _enough;
    private readonly double _bound;
    private readonly int _mostNodes;
    private int _nodes;
    private double _found;
    private double _leftOut;
    private double _waiting;
    private double _summed;

    private CourseSearch(SearchSpace space, Func<Leaf, bool> enough, double bound, int mostNodes) =>
        (_space, _enough, _bound, _mostNodes) = (space, enough, bound, mostNodes);

    /// <summary>
    /// Searches until the mass left out is at most <paramref name="bound"/> of what was found, enough leaves are found, or the
    /// nodes are used up; heaviest leaves first.
    /// </summary>
    /// <param name="network">The network with its evidence.</param>
    /// <param name="plan">Gives the order of the roots.</param>
    /// <param name="enough">Whether the leaves found so far are enough; asked at each.</param>
    /// <param name="bound">Mass left out, relative to the mass found.</param>
    /// <param name="mostNodes">Bounds computed at most, about.</param>
    public static FoundCourses Run(CompiledNetwork network, ExplanationPlan plan, Func<Leaf, bool> enough, double bound, int mostNodes)
    {
        var search = new CourseSearch(new SearchSpace(network, plan), enough, bound, mostNodes);
        search.Run();
        return new([.. search._leaves], search._found, search._leftOut, search._space.Order);
    }

    private void Run()
    {
        if (double.IsNegativeInfinity(_space.Network.LogConstant))
        {
            return;
        }

        Judge(SearchNode.Root(_space.Network), null);
        var done = false;
        while (!done && _nodes < _mostNodes && _queue.TryDequeue(out var entry, out _))
        {
            _waiting -= entry.Mass;
            if (entry.Leaf is { } leaf)
            {
                done = Take(leaf);
            }
            else
            {
                Expand(entry.Node!);
            }

            done |= _leftOut + Waiting() <= _bound * _found;
        }

        // leaves that wait behind heavier nodes are known exactly
        while (_queue.TryDequeue(out var entry, out _))
        {
            if (entry.Leaf is { } leaf && !done)
            {
                done = Take(leaf);
            }
            else
            {
                _leftOut += entry.Mass;
            }
        }
    }

    private bool Take(Leaf leaf)
    {
        _leaves.Add(leaf);
        _found += leaf.Mass;
        return _enough(leaf);
    }

    private void Expand(SearchNode node)
    {
        var scratch = node.Copy();
        var weight = node.Weight;
        for (var i = node.Next; i < _space.End(node) && weight > 0; i++)
        {
            var courses = _space.Roots[i].Courses;
            for (var c = 1; c < courses.Length; c++)
            {
                if (courses[c].Weight > 0)
                {
                    scratch.SetToChild(node, i, courses[c], weight);
                    Judge(scratch, new ChosenFault(node.Faults, _space.Order[i], c));
                }
            }

            weight *= courses[0].Weight;
        }
    }

    private void Judge(SearchNode scratch, ChosenFault? faults)
    {
        _nodes++;
        var mass = _space.Bound(scratch);
        if (mass <= _bound * _found / _mostNodes)
        {
            _leftOut += mass;
            return;
        }

        var leaf = _space.Leaf(scratch);
        if (leaf > 0)
        {
            Enqueue(new Entry(leaf, null, new Leaf(faults, leaf, Math.Max(scratch.Next, _space.Touching))));
        }

        if (scratch.Next < _space.End(scratch))
        {
            Enqueue(new Entry(Math.Max(0, mass - leaf) + Rounding * mass, scratch.Copy() with { Faults = faults }, null));
        }
    }

    private void Enqueue(Entry entry)
    {
        _waiting += entry.Mass;
        _summed = Math.Max(_summed, _waiting);
        _queue.Enqueue(entry, -entry.Mass);
    }

    /// <summary>Mass in the queue; summed afresh when it has become small, so that no rounding of larger numbers stays in it.</summary>
    private double Waiting()
    {
        if (_waiting < 1e-3 * _summed)
        {
            _waiting = _queue.UnorderedItems.Sum(item => item.Element.Mass);
            _summed = _waiting;
        }

        return _waiting;
    }

    /// <param name="Mass">Exact for a leaf, an upper bound for the rest of a node.</param>
    private readonly record struct Entry(double Mass, SearchNode? Node, Leaf? Leaf);
}

/// <summary>One set of faults, all else good up to a position in the order and free from there.</summary>
/// <param name="Last">The roots that are not good, with their courses.</param>
/// <param name="Mass">Not normalised.</param>
/// <param name="Free">First position in the order whose root is summed over.</param>
internal sealed record Leaf(ChosenFault? Last, double Mass, int Free)
{
    public IEnumerable<ChosenFault> Faults => ChosenFault.All(Last);
}

/// <param name="Leaves">Heaviest first.</param>
/// <param name="Mass">Sum over the leaves.</param>
/// <param name="LeftOut">Upper bound on the mass of all other leaves.</param>
/// <param name="Order">Root at each position.</param>
internal sealed record FoundCourses(Leaf[] Leaves, double Mass, double LeftOut, int[] Order);
