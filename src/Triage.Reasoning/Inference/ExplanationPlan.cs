namespace Triage.Reasoning.Inference;

internal enum StepKind
{
    /// <summary>A bit that the next roots may explain comes into the mask, with its leak.</summary>
    Open,

    /// <summary>A root takes its courses.</summary>
    Root,

    /// <summary>No root is left that could explain the bit: what is not explained falls away.</summary>
    Close,
}

/// <param name="Index">The bit, or the root.</param>
/// <param name="Position">Where the bit sits in the mask; 0 for a root.</param>
/// <param name="Open">Bits in the mask before the step, lowest position first; certain bits are on top.</param>
internal readonly record struct Step(StepKind Kind, int Index, int Position, int[] Open);

/// <summary>
/// The order in which roots take their courses, so that few bits are open at once: again and again the bit is closed that
/// opens fewest others. Unconnected parts of the network thereby never meet but in the certain bits, which stay open throughout.
/// </summary>
internal sealed class ExplanationPlan
{
    private const double MostWork = 4e8;
    private const double MostCells = 3e7;

    private readonly List<Step> _steps = [];
    private readonly List<int> _open = [];
    private readonly CompiledNetwork _network;

    private ExplanationPlan(CompiledNetwork network) => _network = network;

    public IReadOnlyList<Step> Steps => _steps;

    /// <summary>
    /// Roots in the order of the steps. Those that touch no uncertain bit come last; of them those that touch nothing uncertain at
    /// all after the others, the likeliest to be faulty first.
    /// </summary>
    public IEnumerable<int> RootOrder => _steps.Where(s => s.Kind == StepKind.Root).Select(s => s.Index);

    /// <summary>Within the budget of work and memory: about 14 bits open at once over some hundred roots.</summary>
    public bool Feasible => _steps.All(s => s.Open.Length < 26) && Work <= MostWork && Cells <= MostCells;

    private IEnumerable<Step> RootSteps => _steps.Where(s => s.Kind == StepKind.Root);

    /// <summary>Additions and multiplications, about.</summary>
    public double Work => RootSteps.Sum(s => Math.Pow(2, s.Open.Length) * _network.Roots[s.Index].Courses.Sum(c => 1 + c.Effects.Length));

    private double Cells => RootSteps.Sum(s => Math.Pow(2, s.Open.Length));

    public static ExplanationPlan Of(CompiledNetwork network)
    {
        var plan = new ExplanationPlan(network);
        plan.Make();
        return plan;
    }

    private void Make()
    {
        var bits = Enumerable.Range(0, _network.Bits.Length).ToArray();
        var uncertain = bits.Where(b => !_network.Bits[b].Certain).ToHashSet();
        var touches = _network.Roots
            .Select(root => root.Courses.SelectMany(c => c.Effects).Select(e => e.Bit).Where(uncertain.Contains).ToHashSet())
            .ToArray();
        var waiting = bits.ToDictionary(b => b, b => new HashSet<int>(Enumerable.Range(0, touches.Length).Where(r => touches[r].Contains(b))));
        foreach (var bit in bits.Except(uncertain))
        {
            Open(bit, _open.Count);
        }

        var local = 0;
        while (uncertain.Count > 0)
        {
            var next = uncertain.MinBy(b => (waiting[b].SelectMany(r => touches[r]).Append(b).Distinct().Count(x => !_open.Contains(x)), waiting[b].Count, b));
            foreach (var root in waiting[next].OrderBy(r => touches[r].Count(x => !_open.Contains(x))).ThenBy(r => r).ToArray())
            {
                foreach (var bit in touches[root].Where(b => !_open.Contains(b)).Order())
                {
                    Open(bit, local++);
                }

                Take(root);
                foreach (var bit in touches[root])
                {
                    waiting[bit].Remove(root);
                }
            }

            if (!_open.Contains(next))
            {
                Open(next, local++);
            }

            foreach (var bit in uncertain.Where(b => _open.Contains(b) && waiting[b].Count == 0).ToArray())
            {
                Close(bit);
                uncertain.Remove(bit);
                local--;
            }
        }

        var bystanders = Enumerable.Range(0, touches.Length).Where(r => touches[r].Count == 0)
            .OrderBy(r => Array.TrueForAll(_network.Roots[r].Courses, c => c.Picks.Length == 0))
            .ThenBy(r => _network.Roots[r].Courses[0].LogWeight);
        foreach (var bystander in bystanders)
        {
            Take(bystander);
        }

        foreach (var bit in _open.ToArray())
        {
            Close(bit);
        }
    }

    private void Open(int bit, int position)
    {
        _steps.Add(new Step(StepKind.Open, bit, position, [.. _open]));
        _open.Insert(position, bit);
    }

    private void Close(int bit)
    {
        var position = _open.IndexOf(bit);
        _steps.Add(new Step(StepKind.Close, bit, position, [.. _open]));
        _open.RemoveAt(position);
    }

    private void Take(int root) => _steps.Add(new Step(StepKind.Root, root, 0, [.. _open]));
}
