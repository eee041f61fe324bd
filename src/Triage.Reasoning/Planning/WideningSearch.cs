namespace Triage.Reasoning.Planning;

/// <summary>
/// Roll-out with a width: in every state the options are ranked by one-step look-ahead and the best few are followed to the end
/// of the job. Width 1 is the roll-out of the one-step policy; as the width grows it becomes the exact programme. Every value
/// is the cost of something that can be done, so a wider search is never worse.
/// </summary>
/// <param name="worth">By option: false for what was too far from the best at the start to be looked at again.</param>
internal sealed class WideningSearch(PlanningModel model, OneStepLookAhead oneStep, bool[] worth, long budget) : IContinuation
{
    private readonly Dictionary<string, Ranking> _ranked = [];
    private readonly Dictionary<string, Valuation> _known = [];
    private int _width;
    private double _leastReach;

    /// <summary>False once the budget is used up: then the values of this width are incomplete.</summary>
    public bool Complete => model.Nodes <= budget;

    /// <summary>True when the last width left no option out anywhere.</summary>
    public bool Exhaustive { get; private set; }

    /// <param name="width">How many options are followed in each state.</param>
    /// <param name="leastReach">In states less likely to be reached than this one option is followed; when it is one everywhere, they are valued by the sequence of fixes.</param>
    public void Widen(int width, double leastReach)
    {
        (_width, _leastReach) = (width, leastReach);
        _known.Clear();
        Exhaustive = true;
    }

    public Valuation From(JobState state)
    {
        if (_width == 1 && state.Reach < _leastReach)
        {
            Exhaustive = false;
            return oneStep.From(state);
        }

        var key = model.Key(state);
        if (_known.TryGetValue(key, out var known))
        {
            return known;
        }

        if (!_ranked.TryGetValue(key, out var ranking))
        {
            _ranked[key] = ranking = Rank(state);
        }

        var best = ranking.OneStep;
        var width = state.Reach < _leastReach ? 1 : _width;
        foreach (var option in ranking.Options.Take(width))
        {
            if (!Complete)
            {
                break;
            }

            best = best.OrBetter(new Valuation(this.CostOf(model, state, option), option));
        }

        Exhaustive &= ranking.Options.Length <= width;
        return _known[key] = best;
    }

    private Ranking Rank(JobState state)
    {
        var ignoring = oneStep.From(state);
        var best = ignoring;
        var informed = new PerfectInformation(model, state);
        var moves = new List<Valuation>();
        foreach (var option in model.ReadyOptions(state))
        {
            if (!worth[option] || !Complete || informed.Bound(option) > best.Cost)
            {
                continue;
            }

            moves.Add(new Valuation(oneStep.CostOf(state, option, ignoring.Cost), option));
            best = best.OrBetter(moves[^1]);
        }

        return new Ranking(best, [.. moves.OrderBy(m => m.Cost).Select(m => m.First)]);
    }

    private sealed record Ranking(Valuation OneStep, int[] Options);
}
