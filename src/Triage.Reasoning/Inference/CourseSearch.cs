namespace Triage.Reasoning.Inference;

/// <summary>
/// Enumerates sets of simultaneous faults, heaviest first, with a rigorous bound on what is left out. A node fixes the roots up
/// to the last fault it chose, the others of them good. Its leaf says that no later root that touches the evidence is at fault;
/// its rest says that some is. Bystanders are summed over, except while a certain bit still needs one of them.
/// Masses are relative to a bound on everything.
/// </summary>
internal sealed class CourseSearch
{
    /// <summary>Rounding of a bound, relative; added wherever a leaf is taken out of one.</summary>
    private const double Rounding = 1e-13;

    private readonly SearchSpace _space;
    private readonly ISearchGuide _guide;
    private readonly SearchLimits _limits;
    private readonly SearchState _state;
    private readonly SearchState _child;
    private readonly PriorityQueue<(double Mass, SearchNode Node), double> _queue = new();
    private readonly PriorityQueue<double, double> _heaviest = new();
    private readonly List<Leaf> _leaves = [];
    private readonly List<Branch> _branches = [];
    private int _work;
    private double _found;
    private double _leftOut;
    private double _waiting;
    private double _summed;

    private CourseSearch(SearchSpace space, ISearchGuide guide, SearchLimits limits) =>
        (_space, _guide, _limits, _state, _child) = (space, guide, limits, new(space.Network), new(space.Network));

    public static FoundCourses Run(CompiledNetwork network, ExplanationPlan plan, SearchLimits limits)
    {
        var space = new SearchSpace(network, plan);
        ISearchGuide? programme = plan.Feasible ? new ProgrammeGuide(space, plan) : null;
        var guide = programme is { LogAll: > double.NegativeInfinity } ? programme : new TiltGuide(space);
        var search = new CourseSearch(space, guide, limits);
        search.Run();
        return new([.. search._leaves.OrderByDescending(l => l.Mass)], guide.LogAll, search._found, search.LeftOut(), space.Order, space.Touching);
    }

    /// <summary>With an exact total what was not found is known, whatever the bounds say.</summary>
    private double LeftOut() => _guide.IsExact ? Math.Max(0, 1 - _found) : _leftOut + Waiting();

    private void Run()
    {
        if (double.IsNegativeInfinity(_guide.LogAll) || double.IsNegativeInfinity(_space.Network.LogConstant))
        {
            return;
        }

        _state.Set([]);
        Judge(new SearchNode(null, 0, 0), _state, 1);
        while (_work < _limits.Work && _queue.TryPeek(out var top, out _) && !IsDone(top.Mass))
        {
            _queue.Dequeue();
            _waiting -= top.Mass;
            Expand(top.Node);
        }
    }

    /// <summary>Little is left out, or the heaviest leaves are known to be so and no better bound can come of going on.</summary>
    private bool IsDone(double heaviestRest) =>
        LeftOut() <= _limits.Bound * _found || _guide.IsExact && heaviestRest <= LightestWanted() || _leaves.Count >= _limits.Leaves;

    private double LightestWanted() => _heaviest.Count >= _limits.Wanted ? _heaviest.Peek() : 0;

    private void Expand(SearchNode node)
    {
        _state.Set(node.Last);
        _branches.Clear();
        var least = Math.Max(_limits.Bound * _found / _limits.Work, _guide.IsExact ? LightestWanted() : 0);
        var (unlisted, hint) = _guide.Branches(node, _state, least, _branches);
        _leftOut += unlisted;
        _work += 10 + _branches.Count;
        foreach (var branch in _branches)
        {
            var bound = Relative(branch.LogBound);
            if (bound <= least)
            {
                _leftOut += bound;
                continue;
            }

            _child.Set(_state, _space.Roots[branch.Position].Courses[branch.Course]);
            var faults = new ChosenFault(node.Last, _space.Order[branch.Position], branch.Course);
            Judge(new SearchNode(faults, branch.Position + 1, branch.LogWeight) { Hint = hint }, _child, bound);
        }
    }

    private void Judge(SearchNode node, SearchState state, double bound)
    {
        var leaf = Relative(_space.LogLeaf(state, node.Next, node.LogWeight));
        if (leaf > 0)
        {
            Take(new Leaf(node.Last, leaf, Math.Max(node.Next, _space.Touching)));
        }

        if (node.Next < _space.End(state))
        {
            var rest = Math.Max(0, bound - leaf) + Rounding * bound;
            _waiting += rest;
            _summed = Math.Max(_summed, _waiting);
            _queue.Enqueue((rest, node), -rest);
        }
    }

    private void Take(Leaf leaf)
    {
        _leaves.Add(leaf);
        _found += leaf.Mass;
        _heaviest.Enqueue(leaf.Mass, leaf.Mass);
        if (_heaviest.Count > _limits.Wanted)
        {
            _heaviest.Dequeue();
        }
    }

    private double Relative(double log) => Math.Exp(log - _guide.LogAll);

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
}

/// <summary>When a search ends.</summary>
/// <param name="Work">Children looked at, about.</param>
/// <param name="Bound">Mass left out, relative to the mass found, that is small enough.</param>
internal readonly record struct SearchLimits(int Work, double Bound)
{
    /// <summary>Leaves of interest: once it is certain which are the heaviest, an exact search need not find others.</summary>
    public int Wanted { get; init; } = int.MaxValue;

    /// <summary>Leaves after which nothing more needs to be found.</summary>
    public int Leaves { get; init; } = int.MaxValue;
}

/// <summary>One set of faults, all else good up to a position in the order and free from there.</summary>
/// <param name="Last">The roots that are not good, with their courses.</param>
/// <param name="Mass">Relative to the bound on everything.</param>
/// <param name="Free">First position in the order whose root is summed over.</param>
internal sealed record Leaf(ChosenFault? Last, double Mass, int Free)
{
    public IEnumerable<ChosenFault> Faults => ChosenFault.All(Last);
}

/// <param name="Leaves">Heaviest first.</param>
/// <param name="LogUnit">Log of the mass that the other numbers are relative to.</param>
/// <param name="Mass">Sum over the leaves.</param>
/// <param name="LeftOut">Upper bound on the mass of all other leaves.</param>
/// <param name="Order">Root at each position.</param>
/// <param name="Touching">Number of positions before the bystanders.</param>
internal sealed record FoundCourses(Leaf[] Leaves, double LogUnit, double Mass, double LeftOut, int[] Order, int Touching);
