namespace Triage.Reasoning.Inference;

/// <summary>
/// The roots in the order they are decided, and bounds. The mass below a node is at most its weight × the exact chance that the
/// roots to come explain the bits that are hardest to explain × for each other bit the most that they can explain of it, or
/// the variational bound on all others together where that is less × for each nominal finding the largest likelihood.
/// </summary>
internal sealed class SearchSpace
{
    private readonly HardestBits _hardest;
    private readonly HardestBits _tilted;
    private readonly Tilt _tilt;
    private readonly double[][] _canExplain;
    private readonly int[] _lastNominal;
    private readonly double[] _goodAfter;
    private readonly int[] _otherBits;

    public SearchSpace(CompiledNetwork network, ExplanationPlan plan)
    {
        Network = network;
        var bystander = network.Roots.Select(IsBystander).ToArray();
        Touching = bystander.Count(b => !b);
        Order =
        [
            .. plan.RootOrder.Where(r => !bystander[r]),
            .. plan.RootOrder.Where(r => bystander[r]).OrderBy(r => network.Roots[r].Courses[0].Weight),
        ];
        Roots = [.. Order.Select(r => network.Roots[r])];
        _lastNominal = [.. network.Nominals.Select((_, n) => Array.FindLastIndex(Roots, r => r.Courses.Any(c => c.Picks.Any(p => p.Nominal == n))))];
        _goodAfter = new double[Touching + 1];
        _goodAfter[Touching] = 1;
        for (var i = Touching - 1; i >= 0; i--)
        {
            _goodAfter[i] = _goodAfter[i + 1] * Roots[i].Courses[0].Weight;
        }

        var hardest = HardestBits.Choose(network, Roots);
        _otherBits = [.. Enumerable.Range(0, network.Bits.Length).Except(hardest)];
        _tilt = Tilt.Of(network, Roots);
        _hardest = HardestBits.Of(hardest, Roots, _ => 1);
        _tilted = HardestBits.Of(
            hardest, Roots, c => c.Effects.Where(e => _otherBits.Contains(e.Bit)).Aggregate(1.0, (f, e) => f * _tilt.Factor(e.Bit, e.Q)));
        _canExplain = CanExplain();
    }

    public CompiledNetwork Network { get; }

    /// <summary>Index of the root at each position; bystanders last, the likeliest to be faulty first.</summary>
    public int[] Order { get; }

    public CompiledRoot[] Roots { get; }

    /// <summary>Number of positions before the bystanders.</summary>
    public int Touching { get; }

    /// <summary>One past the last position at which a node may choose a fault.</summary>
    public int End(SearchNode node) => IsSettled(node) ? Touching : Roots.Length;

    public double Bound(SearchNode node)
    {
        var bound = node.Weight * Math.Min(ByEachBest(node), _otherBits.Length > 0 ? ByTilt(node) : 1);

        for (var n = 0; n < _lastNominal.Length; n++)
        {
            bound *= _lastNominal[n] < node.Next ? Nominal(node, n) : Network.Nominals[n].Most;
        }

        return bound;
    }

    private double ByEachBest(SearchNode node)
    {
        var bound = _hardest.Explained(node.Next, node.Unexplained, node.Explained);
        foreach (var b in _otherBits)
        {
            bound *= node.Explained[b] + node.Unexplained[b] * _canExplain[node.Next][b];
        }

        return bound;
    }

    private double ByTilt(SearchNode node)
    {
        var bound = _tilted.Explained(node.Next, node.Unexplained, node.Explained);
        foreach (var b in _otherBits)
        {
            bound *= _tilt.Factor(b, node.Unexplained[b]) * _tilt.Start(b);
        }

        return bound;
    }

    /// <summary>The exact mass of the node with no more faults among the roots that touch the evidence.</summary>
    public double Leaf(SearchNode node)
    {
        if (!IsSettled(node))
        {
            return 0;
        }

        var mass = node.Weight * (node.Next < Touching ? _goodAfter[node.Next] : 1);
        foreach (var explained in node.Explained)
        {
            mass *= explained;
        }

        for (var n = 0; n < _lastNominal.Length; n++)
        {
            mass *= Nominal(node, n);
        }

        return mass;
    }

    private bool IsBystander(CompiledRoot root) =>
        root.Courses.All(c => c.Picks.Length == 0 && c.Effects.All(e => Network.Bits[e.Bit].Certain));

    /// <summary>Every certain bit is explained, so that bystanders are free.</summary>
    private bool IsSettled(SearchNode node)
    {
        for (var b = 0; b < Network.Bits.Length; b++)
        {
            if (Network.Bits[b].Certain && node.Unexplained[b] > 0)
            {
                return false;
            }
        }

        return true;
    }

    private double Nominal(SearchNode node, int n) => node.Count[n] == 0 ? Network.Nominals[n].Ambient : node.Sum[n] / node.Count[n];

    /// <summary>Per position and bit, the most that the roots from there on can explain, each by its best course.</summary>
    private double[][] CanExplain()
    {
        var can = new double[Roots.Length + 1][];
        can[^1] = new double[Network.Bits.Length];
        for (var i = Roots.Length - 1; i >= 0; i--)
        {
            var best = new double[Network.Bits.Length];
            foreach (var effect in Roots[i].Courses.Where(c => c.Weight > 0).SelectMany(c => c.Effects))
            {
                best[effect.Bit] = Math.Max(best[effect.Bit], effect.P);
            }

            can[i] = [.. can[i + 1].Zip(best, (later, own) => own + (1 - own) * later)];
        }

        return can;
    }
}
