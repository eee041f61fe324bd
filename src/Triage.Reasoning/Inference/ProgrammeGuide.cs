namespace Triage.Reasoning.Inference;

/// <summary>
/// Masses from the dynamic programme run backward: what is below a node is its weight × the chance that the roots still to come
/// explain what its faults do not. Exact but for nominal findings, which count with the most they can be.
/// </summary>
internal sealed class ProgrammeGuide : ISearchGuide
{
    private readonly SearchSpace _space;
    private readonly IReadOnlyList<Step> _steps;
    private readonly Completions _completions;
    private readonly int[] _stepOf;
    private readonly int[] _closing;
    private readonly double[] _q;
    private readonly double[] _p;
    private double[] _scratch = [];

    public ProgrammeGuide(SearchSpace space, ExplanationPlan plan)
    {
        (_space, _steps, _completions) = (space, plan.Steps, Completions.Of(space.Network, plan));
        _stepOf = [.. Enumerable.Range(0, _steps.Count).Where(s => _steps[s].Kind == StepKind.Root)];
        (_closing, _q, _p) = (new int[space.Network.Bits.Length], new double[space.Network.Bits.Length], new double[space.Network.Bits.Length]);
        for (var s = 0; s < _steps.Count; s++)
        {
            if (_steps[s].Kind == StepKind.Close)
            {
                _closing[_steps[s].Index] = s;
            }
        }

        LogAll = _completions.LogAll + space.Network.Nominals.Sum(n => Math.Log(n.Most));
    }

    public double LogAll { get; }

    public bool IsExact => _space.Network.Nominals.Length == 0;

    public (double Unlisted, double[]? Hint) Branches(SearchNode node, SearchState state, double least, List<Branch> branches)
    {
        state.Unexplained.CopyTo(_q, 0);
        state.Explained.CopyTo(_p, 0);
        var (weight, explained, unlisted, position, end) = (node.LogWeight, 0.0, 0.0, node.Next, _space.End(state));
        var start = position == 0 ? 0 : _stepOf[position - 1] + 1;
        for (var b = 0; b < _closing.Length; b++)
        {
            explained += _closing[b] < start ? Math.Log(_p[b]) : 0;
        }

        var rest = double.NaN;
        for (var s = start; position < end && weight + explained > double.NegativeInfinity; s++)
        {
            var step = _steps[s];
            if (step.Kind == StepKind.Close)
            {
                explained += Math.Log(_p[step.Index]);
            }
            else if (step.Kind == StepKind.Root)
            {
                var good = _space.Roots[position].Courses[0];
                var before = double.IsNaN(rest) ? Mass(weight + explained, s, step.Open, good, position, state) : rest;
                rest = Mass(weight + good.LogWeight + explained, s + 1, step.Open, good, position + 1, state);
                if (before <= least)
                {
                    return (unlisted + before, null);
                }

                if (before - rest <= least)
                {
                    unlisted += Math.Max(0, before - rest);
                }
                else
                {
                    List(state, s, position, weight, explained, branches);
                }

                weight += good.LogWeight;
                position++;
            }
        }

        return (unlisted, null);
    }

    /// <summary>The children that choose a fault at one position.</summary>
    private void List(SearchState state, int s, int position, double weight, double explained, List<Branch> branches)
    {
        var courses = _space.Roots[position].Courses;
        for (var c = 1; c < courses.Length; c++)
        {
            foreach (var effect in courses[c].Effects)
            {
                _p[effect.Bit] += _q[effect.Bit] * effect.P;
                _q[effect.Bit] *= effect.Q;
            }

            var bound = LogMass(weight + courses[c].LogWeight + explained, s + 1, _steps[s].Open, courses[c], position + 1, state);
            branches.Add(new Branch(position, c, weight + courses[c].LogWeight, bound));
            foreach (var effect in courses[c].Effects)
            {
                (_q[effect.Bit], _p[effect.Bit]) = (state.Unexplained[effect.Bit], state.Explained[effect.Bit]);
            }
        }
    }

    private double Mass(double log, int s, int[] open, Course course, int next, SearchState state) =>
        Math.Exp(LogMass(log, s, open, course, next, state) - LogAll);

    private double LogMass(double log, int s, int[] open, Course course, int next, SearchState state)
    {
        var (completion, logScale) = _completions[s];
        if (_scratch.Length < completion.Length)
        {
            _scratch = new double[completion.Length];
        }

        completion.CopyTo(_scratch, 0);
        for (var i = open.Length - 1; i >= 0; i--)
        {
            var half = 1 << i;
            BitVector.Mix(_scratch.AsSpan(0, half), _scratch.AsSpan(half, half), _q[open[i]], _p[open[i]]);
        }

        return log + logScale + Math.Log(_scratch[0]) + _space.LogNominals(state, course, next);
    }
}
