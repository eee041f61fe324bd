namespace Triage.Reasoning.Planning;

/// <summary>
/// A bound from below: even somebody who is told what is wrong must do a fix that touches it, or give up (value of perfect
/// information, Howard 1966). Options that cannot beat what is known need not be looked into.
/// </summary>
internal sealed class PerfectInformation
{
    private readonly PlanningModel _model;
    private readonly double[] _belief;
    private readonly double[] _least;
    private readonly double _total;

    public PerfectInformation(PlanningModel model, JobState state)
    {
        (_model, _belief) = (model, state.Belief);
        _least = new double[_belief.Length];
        Array.Fill(_least, model.CheapestStop(state.Done, state.Open).Cost);
        foreach (var fix in model.Fixes)
        {
            if (!state.Done[fix])
            {
                Lower(model.Space.Clearances[fix]!, model.Price(fix, state.Open));
            }
        }

        _total = Weights.Dot(_belief, _least);
    }

    /// <summary>No policy that begins with this test or fix costs less. Openings are left out: what follows may share them.</summary>
    public double Bound(int option)
    {
        var bound = _model.OwnPrice(option) + _total;
        var sets = _model.Space.Clearances[option]?.Sets ?? [];
        foreach (var set in sets)
        {
            bound -= _belief[set] * _least[set];
        }

        return bound;
    }

    private void Lower(Clearance clearance, double price)
    {
        _model.Nodes += clearance.Sets.Length;
        foreach (var set in clearance.Sets)
        {
            _least[set] = Math.Min(_least[set], price);
        }
    }
}
