namespace Triage.Reasoning.Planning;

/// <summary>
/// A bound from below: what somebody pays who is told what is wrong (value of perfect information, Howard 1966). He tries the
/// fixes that touch it, best chance for the price first, until something goes or he gives up.
/// </summary>
internal sealed class PerfectInformation
{
    private readonly PlanningModel _model;
    private readonly double[] _belief;
    private readonly double[] _least;

    public PerfectInformation(PlanningModel model, JobState state)
    {
        (_model, _belief) = (model, state.Belief);
        var stop = model.LeastStop;
        _least = new double[_belief.Length];
        for (var set = 0; set < _least.Length; set++)
        {
            _least[set] = _belief[set] > 0 ? Told(set, stop, state) : 0;
        }

        Least = Weights.Dot(_belief, _least);
    }

    /// <summary>No policy costs less.</summary>
    public double Least { get; }

    /// <summary>No policy that begins with this test or fix costs less. Openings are left out: what follows may share them.</summary>
    public double Bound(int option)
    {
        var bound = _model.OwnPrice(option) + Least;
        var sets = _model.Space.Clearances[option]?.Sets ?? [];
        foreach (var set in sets)
        {
            bound -= _belief[set] * _least[set];
        }

        return bound;
    }

    /// <summary>
    /// Of several faults the first that goes counts as all, and only the cheapest opening is paid, once: both only lower it. For
    /// fixes in the order of chance over price, the last first, each is taken if it betters what comes after it.
    /// </summary>
    private double Told(int set, double stop, JobState state)
    {
        var (cost, opening) = (stop, stop);
        var attempts = _model.Attempts[set];
        _model.Nodes += attempts.Length;
        foreach (var (fix, chance) in attempts)
        {
            if (!state.Done[fix])
            {
                cost = Math.Min(cost, _model.OwnPrice(fix) + (1 - chance) * cost);
                opening = Math.Min(opening, _model.Ways.Opening(fix, state.Open));
            }
        }

        return Math.Min(stop, cost + opening);
    }
}
