namespace Triage.Reasoning.Planning;

/// <summary>
/// As <see cref="FixSequence"/>, but the order by p/c is settled before anything is tried and fixes behind one lid are not taken
/// together. For single faults beside each other it is the same order; it is the cost of something that can be done, so never below
/// the optimum, and costs a sort instead of a search at every step.
/// </summary>
internal sealed class SettledSequence(PlanningModel model) : IContinuation
{
    private readonly RemainingWork _work = new(model);
    private readonly double[] _ratio = new double[model.Fixes.Length];

    public Valuation From(JobState state)
    {
        _work.Begin(state);
        SortByRatio();
        var best = _work.Stop;
        var (spent, stop, first) = (0.0, best.Cost, -1);
        for (var i = 0; i < _work.ActiveCount && spent + _work.Incurable * stop < best.Cost; i++)
        {
            while (!_work.Done[_work.Active[i]])
            {
                var step = model.Rules.Next(_work.Active[i], _work.Done);
                first = first < 0 ? step : first;
                spent += _work.Failing * _work.Price(step);
                _work.Do(step, gains: false);
                stop = _work.Stop.Cost;
            }

            best = best.OrBetter(new Valuation(spent + _work.Failing * stop, first));
        }

        return best;
    }

    private void SortByRatio()
    {
        for (var i = 0; i < _work.ActiveCount; i++)
        {
            var fix = _work.Active[i];
            _ratio[i] = (_work.Own[fix] + _work.Opening[fix]) / _work.Gain[fix];
        }

        model.Nodes += 2 * _work.ActiveCount;
        Array.Sort(_ratio, _work.Active, 0, _work.ActiveCount);
    }
}
