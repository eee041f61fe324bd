namespace Triage.Reasoning.Planning;

/// <summary>
/// Scratch for following a sequence of fixes: the weights of what remains, what each fix would gain and what it would cost now.
/// Weights are not normalised: they sum to the chance that the job still goes on.
/// </summary>
internal sealed class RemainingWork
{
    private readonly PlanningModel _model;
    private readonly int[] _fixes;
    private readonly double[] _weights;
    private readonly bool[] _curable;
    private readonly int[] _touchFrom;
    private readonly (int Fix, double Share)[] _touches;
    private readonly bool[] _open;
    private int _active;

    public RemainingWork(PlanningModel model)
    {
        _model = model;
        _fixes = model.Fixes;
        Active = new int[_fixes.Length];
        _weights = new double[model.Space.Count];
        _open = new bool[model.Ways.OpenAtStart.Length];
        Done = new bool[model.Options.Length];
        Gain = new double[model.Options.Length];
        Own = new double[model.Options.Length];
        Opening = new double[model.Options.Length];
        _curable = model.Space.Curable(_fixes.Select(f => (FixOption)model.Options[f]));
        (_touchFrom, _touches) = model.Space.Touches(_fixes);
    }

    public bool[] Done { get; }

    /// <summary>Fixes that may be worth doing, in the given order; only the first <see cref="ActiveCount"/> count.</summary>
    public int[] Active { get; }

    public int ActiveCount => _active;

    /// <summary>Probability that the unit works next, with a share for each fault of several that goes.</summary>
    public double[] Gain { get; }

    /// <summary>Price without opening anything, with everything that must be done before.</summary>
    public double[] Own { get; }

    public double[] Opening { get; }

    /// <summary>Chance that the job still goes on.</summary>
    public double Failing { get; private set; }

    /// <summary>The part of <see cref="Failing"/> that no fix can ever end.</summary>
    public double Incurable { get; private set; }

    public Valuation Stop => _model.CheapestStop(Done, _open);

    public void Begin(JobState state)
    {
        state.Belief.CopyTo(_weights, 0);
        state.Done.CopyTo(Done, 0);
        state.Open.CopyTo(_open, 0);
        Failing = 1;
        Incurable = 0;
        for (var set = 0; set < _weights.Length; set++)
        {
            Incurable += _curable[set] ? 0 : _weights[set];
        }

        _model.Nodes += _weights.Length + PlannerBudget.NodesPerBelief;
        Choose(Stop.Cost);
        SetPrices();
    }

    /// <summary>Price of one step, opening included.</summary>
    public double Price(int step) => _model.Price(step, _open);

    public double OpeningOf(int[] way) => _model.Ways.OpeningOf(way, _open);

    /// <param name="step">A step that is ready.</param>
    /// <param name="gains">Keep <see cref="Gain"/> in step with what remains.</param>
    public void Do(int step, bool gains = true)
    {
        Done[step] = true;
        var opens = _model.Ways.IsClosed(step, _open);
        _model.Ways.Open(step, _open);
        if (_model.Space.Clearances[step] is { } clearance)
        {
            Clear(clearance, gains);
        }

        if (opens || _model.Rules.AnyOrder)
        {
            SetPrices();
        }
    }

    /// <summary>
    /// A step betters the plan only if gain · stop exceeds price · failing, and failing never falls below the incurable part.
    /// Gains of several faults at once can grow as the others go; the factor 2 allows for that.
    /// </summary>
    public bool CannotPay(double gain, double price, double stop) => gain <= 1e-15 || 2 * gain * stop < price * Incurable;

    private void Choose(double stop)
    {
        _active = 0;
        foreach (var fix in _fixes)
        {
            if (Done[fix])
            {
                continue;
            }

            var clearance = _model.Space.Clearances[fix]!;
            Gain[fix] = clearance.Sum(_weights, clearance.Share);
            _model.Nodes += clearance.Sets.Length;
            if (!CannotPay(Gain[fix], _model.OwnPrice(fix), stop))
            {
                Active[_active++] = fix;
            }
        }
    }

    private void SetPrices()
    {
        for (var i = 0; i < _active; i++)
        {
            var fix = Active[i];
            Own[fix] = _model.OwnPrice(fix);
            Opening[fix] = _model.Ways.Opening(fix, _open);
            if (_model.Rules.HasEarlier(fix))
            {
                Own[fix] += _model.Rules.Missing(fix, Done).Sum(o => _model.Price(o, _open));
            }
        }
    }

    private void Clear(Clearance clearance, bool gains)
    {
        var sets = clearance.Sets;
        for (var entry = 0; entry < sets.Length; entry++)
        {
            var weight = _weights[sets[entry]];
            if (weight == 0)
            {
                continue;
            }

            Failing = Math.Max(0, Failing - weight * clearance.Works[entry]);
            Shift(sets[entry], -weight, gains);
            for (var left = clearance.From[entry]; left < clearance.From[entry + 1]; left++)
            {
                Shift(clearance.Left[left], weight * clearance.Chance[left], gains);
            }
        }
    }

    private void Shift(int set, double by, bool gains)
    {
        _weights[set] = Math.Max(0, _weights[set] + by);
        if (!gains)
        {
            _model.Nodes++;
            return;
        }

        _model.Nodes += _touchFrom[set + 1] - _touchFrom[set];
        for (var touch = _touchFrom[set]; touch < _touchFrom[set + 1]; touch++)
        {
            Gain[_touches[touch].Fix] += by * _touches[touch].Share;
        }
    }
}
