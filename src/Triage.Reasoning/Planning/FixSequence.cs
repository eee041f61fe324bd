namespace Triage.Reasoning.Planning;

/// <summary>
/// The continuation value: fixes in the order of p/c re-weighed after each failure (Kalagnanam &amp; Henrion 1988; Heckerman,
/// Breese &amp; Rommelse 1995), every prefix considered for stopping; fixes behind one lid also as a block at the ratio of the
/// block (Ottosen &amp; Jensen 2010). It is the exact cost of something that can be done, so never below the optimum.
/// </summary>
internal sealed class FixSequence : IContinuation
{
    private readonly PlanningModel _model;
    private readonly int[] _fixes;
    private readonly (int Fix, double Share)[][] _touchedBy;
    private readonly double[] _weights;
    private readonly double[] _gain;
    private readonly double[] _price;
    private readonly bool[] _done;
    private readonly bool[] _open;
    private double _failing;

    public FixSequence(PlanningModel model)
    {
        _model = model;
        _fixes = [.. model.Numbers.Where(o => model.Options[o] is FixOption && model.Rules.Allowed[o])];
        _weights = new double[model.Space.Count];
        _gain = new double[model.Options.Length];
        _price = new double[model.Options.Length];
        _done = new bool[model.Options.Length];
        _open = new bool[model.Ways.OpenAtStart.Length];
        var touches = _fixes.SelectMany(f => model.Space.Clearances[f]!.Moves.Select(m => (m.Set, Touch: (f, m.Share)))).ToLookup(x => x.Set, x => x.Touch);
        _touchedBy = [.. Enumerable.Range(0, model.Space.Count).Select(s => touches[s].ToArray())];
    }

    /// <summary>Cost of the better of the two orders, with and without blocks.</summary>
    public Valuation From(JobState state)
    {
        var singly = Follow(state, inBlocks: false);
        if (!Array.Exists(_fixes, f => !state.Done[f] && _model.Ways.IsClosed(f, state.Open)))
        {
            return singly;
        }

        return singly.OrBetter(Follow(state, inBlocks: true));
    }

    private Valuation Follow(JobState state, bool inBlocks)
    {
        Begin(state);
        var best = _model.CheapestStop(_done, _open);
        var first = -1;
        for (var spent = 0.0; spent < best.Cost;)
        {
            var wanted = inBlocks ? BestInBlocks() : BestSingly();
            if (wanted < 0)
            {
                break;
            }

            var step = _model.Rules.Next(wanted, _done);
            first = first < 0 ? step : first;
            spent += _failing * _model.Price(step, _open);
            Do(step);
            var cost = spent + (_failing > 0 ? _failing * _model.CheapestStop(_done, _open).Cost : 0);
            best = best.OrBetter(new Valuation(cost, first));
        }

        return best;
    }

    private void Begin(JobState state)
    {
        state.Belief.CopyTo(_weights, 0);
        state.Done.CopyTo(_done, 0);
        state.Open.CopyTo(_open, 0);
        _failing = 1;
        _model.Nodes += _weights.Length;
        foreach (var fix in _fixes)
        {
            _gain[fix] = 0;
            foreach (var move in _model.Space.Clearances[fix]!.Moves)
            {
                _gain[fix] += _weights[move.Set] * move.Share;
            }
        }

        SetPrices();
    }

    private void SetPrices()
    {
        foreach (var fix in _fixes)
        {
            _price[fix] = _model.Price(fix, _open);
            if (_model.Rules.HasEarlier(fix))
            {
                _price[fix] += _model.Rules.Missing(fix, _done).Sum(o => _model.Price(o, _open));
            }
        }
    }

    private void Do(int step)
    {
        _done[step] = true;
        _model.Ways.Open(step, _open);
        if (_model.Space.Clearances[step] is { } clearance)
        {
            Clear(clearance);
        }

        SetPrices();
    }

    private void Clear(Clearance clearance)
    {
        foreach (var move in clearance.Moves)
        {
            var weight = _weights[move.Set];
            if (weight == 0)
            {
                continue;
            }

            _failing = Math.Max(0, _failing - weight * move.Works);
            Shift(move.Set, -weight);
            foreach (var (left, chance) in move.Left)
            {
                Shift(left, weight * chance);
            }
        }
    }

    private void Shift(int set, double by)
    {
        _weights[set] = Math.Max(0, _weights[set] + by);
        foreach (var (fix, share) in _touchedBy[set])
        {
            _gain[fix] += by * share;
        }
    }

    private bool Useful(int fix) => !_done[fix] && _gain[fix] > 1e-15;

    private static bool Better(double gain, double price, double thanGain, double thanPrice) =>
        gain * thanPrice > thanGain * price * (1 + Valuation.Tie);

    private int BestSingly()
    {
        var best = -1;
        _model.Nodes += _fixes.Length;
        foreach (var fix in _fixes)
        {
            if (Useful(fix) && (best < 0 || Better(_gain[fix], _price[fix], _gain[best], _price[best])))
            {
                best = fix;
            }
        }

        return best;
    }

    private int BestInBlocks()
    {
        var best = BestSingly();
        if (best < 0)
        {
            return best;
        }

        var (gain, price) = (_gain[best], _price[best]);
        foreach (var way in _model.Ways.Places)
        {
            var opening = _model.Ways.OpeningOf(way, _open);
            if (opening > 0 && Block(way, opening) is { } block && Better(block.Gain, block.Price, gain, price))
            {
                (best, gain, price) = block;
            }
        }

        return best;
    }

    /// <summary>The best prefix by p/c of the fixes that one way lays open, with the opening paid once.</summary>
    private (int First, double Gain, double Price)? Block(int[] way, double opening)
    {
        var behind = _fixes
            .Where(f => Useful(f) && _model.Ways.IsClosed(f, _open) && _model.Ways.Reached(f, way, _open))
            .Select(f => (Fix: f, Gain: _gain[f], Own: _price[f] - _model.Ways.Opening(f, _open)))
            .OrderBy(f => f.Own / f.Gain).ToList();
        _model.Nodes += _fixes.Length;
        if (behind.Count == 0)
        {
            return null;
        }

        var (gain, price) = (0.0, opening);
        foreach (var fix in behind)
        {
            if (gain > 0 && !Better(fix.Gain, fix.Own, gain, price))
            {
                break;
            }

            (gain, price) = (gain + fix.Gain, price + fix.Own);
        }

        return (behind[0].Fix, gain, price);
    }
}
