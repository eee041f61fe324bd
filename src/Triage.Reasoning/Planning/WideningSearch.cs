namespace Triage.Reasoning.Planning;

/// <summary>
/// Roll-out with a width: in every state the options are ranked by one-step look-ahead and the best few are followed to the end
/// of the job. Width 1 is the roll-out of the one-step policy; as the width grows it becomes the exact programme. Every value
/// is the cost of something that can be done, so a wider search is never worse.
/// </summary>
internal sealed class WideningSearch(PlanningModel model, OneStepLookAhead oneStep, long budget) : IContinuation
{
    /// <summary>Options that a state inherits from the state before it as worth ranking. Chosen, not derived.</summary>
    private const int Shortlist = 24;

    private readonly Dictionary<string, Ranking> _ranked = [];
    private readonly Dictionary<string, Valuation> _known = [];
    private int _width;

    /// <summary>False once the budget is used up: then the values of this width are incomplete.</summary>
    public bool Complete => model.Nodes <= budget;

    /// <summary>True when the last width left no option out anywhere.</summary>
    public bool Exhaustive { get; private set; }

    public void Widen(int width)
    {
        _width = width;
        _known.Clear();
        Exhaustive = true;
    }

    public Valuation From(JobState state)
    {
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
        foreach (var option in ranking.Options.Take(_width))
        {
            if (!Complete)
            {
                break;
            }

            best = best.OrBetter(new Valuation(this.CostOf(model, state, option), option));
        }

        Exhaustive &= ranking.Options.Length <= _width;
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
            if (model.Options[option] is StopOption || !Complete || informed.Bound(option) > best.Cost)
            {
                continue;
            }

            moves.Add(new Valuation(oneStep.CostOf(state, option, ignoring.Cost), option));
            best = best.OrBetter(moves[^1]);
        }

        return new Ranking(best, [.. moves.OrderBy(m => m.Cost).Take(Shortlist).Select(m => m.First)]);
    }

    private sealed record Ranking(Valuation OneStep, int[] Options);
}
