namespace Triage.Reasoning.Inference;

/// <summary>
/// The heaviest sets of faults and those that differ from one of the heaviest in one root, so that every fault that touches what is
/// abnormal is in some. Weighed under other numbers of the same network: the sets are searched for once, and no posterior is worked out again.
/// </summary>
internal sealed class NearbyHypotheses
{
    private const int Work = 5_000, Heaviest = 200, Most = 2_000;
    private const double Bound = 1e-3;

    /// <summary>Part of the mass found whose sets get their neighbours too.</summary>
    private const double Surrounded = 0.9;

    private readonly int[] _order;
    private readonly int _touching;
    private readonly List<ChosenFault[]> _sets = [];
    private readonly List<int> _free = [];
    private readonly bool[] _isGood;
    private readonly HashSet<string> _known = [];

    private NearbyHypotheses(CompiledNetwork network, FoundCourses found)
    {
        (_order, _touching) = (found.Order, found.Touching);
        _isGood = Array.ConvertAll(network.Roots, r => r.Courses[0].Weight > 0);
        Leaf[] leaves = [.. found.Leaves.Take(Heaviest)];
        foreach (var leaf in leaves)
        {
            Add([.. leaf.Faults], leaf.Free);
        }

        var rest = found.Mass * Surrounded;
        foreach (var leaf in leaves.Where(l => l.Free == _touching).TakeWhile(_ => rest > 0 && _sets.Count < Most))
        {
            AddNeighbours(network, [.. leaf.Faults]);
            rest -= leaf.Mass;
        }
    }

    /// <summary>Null when the evidence is impossible.</summary>
    public static NearbyHypotheses? Of(CompiledNetwork network)
    {
        var found = CourseSearch.Run(network, ExplanationPlan.Of(network), new(Work, Bound) { Wanted = Heaviest });
        return found.Leaves.Length > 0 ? new(network, found) : null;
    }

    /// <summary>The posterior of every course over these sets alone.</summary>
    /// <param name="network">Compiled from the same network and evidence with other numbers: what was possible stays so, what was not does not become so.</param>
    public CoursePosterior Under(CompiledNetwork network)
    {
        var logs = LogMasses(network);
        var most = logs.Max();
        var mass = network.Roots.Select(r => new double[r.Courses.Length]).ToArray();
        var free = new double[_order.Length + 1];
        var total = 0.0;
        for (var h = 0; h < logs.Length; h++)
        {
            var weight = Math.Exp(logs[h] - most);
            total += weight;
            free[_free[h]] += weight;
            foreach (var (_, root, course) in _sets[h])
            {
                mass[root][course] += weight;
            }
        }

        CourseInference.Share(network, mass, free, _order, total);
        return new(most + Math.Log(total), mass, 0);
    }

    private void AddNeighbours(CompiledNetwork network, ChosenFault[] faults)
    {
        for (var i = 0; i < _touching; i++)
        {
            var others = Array.FindAll(faults, f => f.Root != _order[i]);
            Add(others, _touching);
            for (var c = 1; c < network.Roots[_order[i]].Courses.Length; c++)
            {
                Add([.. others, new(null, _order[i], c)], _touching);
            }
        }
    }

    private void Add(ChosenFault[] faults, int free)
    {
        if (_known.Add(string.Join(' ', faults.OrderBy(f => f.Root).Select(f => (f.Root, f.Course)))))
        {
            _sets.Add(faults);
            _free.Add(free);
        }
    }

    private double[] LogMasses(CompiledNetwork network)
    {
        var state = new SearchState(network);
        var goodBefore = new double[_order.Length + 1];
        var mustFail = new int[_order.Length + 1];
        for (var i = 0; i < _order.Length; i++)
        {
            goodBefore[i + 1] = goodBefore[i] + (_isGood[_order[i]] ? network.Roots[_order[i]].Courses[0].LogWeight : 0);
            mustFail[i + 1] = mustFail[i] + (_isGood[_order[i]] ? 0 : 1);
        }

        var logs = new double[_sets.Count];
        for (var h = 0; h < logs.Length; h++)
        {
            state.Set(_sets[h]);
            var (log, fails) = (goodBefore[_free[h]] + state.LogExplained(), 0);
            foreach (var (_, root, course) in _sets[h])
            {
                log += network.Roots[root].Courses[course].LogWeight - (_isGood[root] ? network.Roots[root].Courses[0].LogWeight : 0);
                fails += _isGood[root] ? 0 : 1;
            }

            logs[h] = fails == mustFail[_free[h]] && state.IsSettled() ? log : double.NegativeInfinity;
        }

        return logs;
    }
}
