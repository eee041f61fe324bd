namespace Triage.Reasoning.Inference;

/// <summary>
/// The roots in the order they are decided, and the exact mass of a node's leaf. Bystanders, roots that touch no uncertain bit and
/// no nominal finding, come last.
/// </summary>
internal sealed class SearchSpace
{
    private readonly int[] _lastNominal;
    private readonly double[] _logGoodAfter;

    public SearchSpace(CompiledNetwork network, ExplanationPlan plan)
    {
        Network = network;
        var bystander = Array.ConvertAll(network.Roots, IsBystander);
        Touching = bystander.Count(b => !b);
        Order = [.. plan.RootOrder];
        Roots = Array.ConvertAll(Order, r => network.Roots[r]);
        _lastNominal = [.. network.Nominals.Select((_, n) => Array.FindLastIndex(Roots, r => r.Courses.Any(c => c.Picks.Any(p => p.Nominal == n))))];
        _logGoodAfter = new double[Touching + 1];
        for (var i = Touching - 1; i >= 0; i--)
        {
            _logGoodAfter[i] = _logGoodAfter[i + 1] + Roots[i].Courses[0].LogWeight;
        }
    }

    public CompiledNetwork Network { get; }

    /// <summary>Index of the root at each position.</summary>
    public int[] Order { get; }

    public CompiledRoot[] Roots { get; }

    /// <summary>Number of positions before the bystanders.</summary>
    public int Touching { get; }

    /// <summary>One past the last position at which a node may choose a fault.</summary>
    public int End(SearchState state) => state.IsSettled() ? Touching : Roots.Length;

    /// <summary>Log of the exact mass of a node with no more faults among the roots that touch the evidence.</summary>
    /// <param name="state">What its faults explain.</param>
    /// <param name="next">First position that is not decided.</param>
    /// <param name="logWeight">Log of the weights decided.</param>
    public double LogLeaf(SearchState state, int next, double logWeight)
    {
        if (!state.IsSettled())
        {
            return double.NegativeInfinity;
        }

        return logWeight + (next < Touching ? _logGoodAfter[next] : 0) + state.LogExplained();
    }

    /// <summary>Log of an upper bound on the nominal factors of a state that takes one more course, once roots before a position are decided.</summary>
    public double LogNominals(SearchState state, Course course, int next)
    {
        var log = 0.0;
        for (var n = 0; n < _lastNominal.Length; n++)
        {
            log += Math.Log(_lastNominal[n] < next ? state.Nominal(n, course) : Network.Nominals[n].Most);
        }

        return log;
    }

    private bool IsBystander(CompiledRoot root) =>
        Array.TrueForAll(root.Courses, c => c.Picks.Length == 0 && Array.TrueForAll(c.Effects, e => Network.Bits[e.Bit].Certain));
}
