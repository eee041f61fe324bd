namespace Triage.Reasoning.Planning;

/// <summary>
/// The continuation value: fixes in the order of p/c re-weighed after each failure (Kalagnanam &amp; Henrion 1988; Heckerman,
/// Breese &amp; Rommelse 1995), every prefix considered for stopping; fixes behind one lid also as a block at the ratio of the
/// block (Ottosen &amp; Jensen 2010). It is the exact cost of something that can be done, so never below the optimum.
/// </summary>
internal sealed class FixSequence(PlanningModel model) : IContinuation
{
    private readonly RemainingWork _work = new(model);

    /// <summary>For each way that lays several fixes open: the way and those fixes.</summary>
    private readonly (int[] Way, int[] Fixes)[] _blocks = [.. model.Ways.Places
        .Select(way => (way, model.Numbers.Where(o => model.Options[o] is FixOption && model.Ways.LiesOn(o, way)).ToArray()))
        .Where(b => b.Item2.Length > 1)];

    /// <summary>Cost of the better of the two orders, with and without blocks.</summary>
    public Valuation From(JobState state)
    {
        if (!Array.Exists(_blocks, b => model.Ways.OpeningOf(b.Way, state.Open) > 0))
        {
            return Follow(state, inBlocks: false, out _);
        }

        var inBlocks = Follow(state, inBlocks: true, out var differs);
        return differs ? Follow(state, inBlocks: false, out _).OrBetter(inBlocks) : inBlocks;
    }

    private Valuation Follow(JobState state, bool inBlocks, out bool differs)
    {
        _work.Begin(state);
        differs = false;
        var best = _work.Stop;
        var first = -1;
        for (var (spent, stop) = (0.0, best.Cost); spent + _work.Incurable * stop < best.Cost;)
        {
            var singly = BestSingly();
            var wanted = inBlocks && singly.Fix >= 0 ? BestBlock(singly) : singly;
            if (wanted.Fix < 0 || _work.CannotPay(wanted.Gain, wanted.Price, stop))
            {
                break;
            }

            differs |= wanted.Fix != singly.Fix;
            var step = model.Rules.Next(wanted.Fix, _work.Done);
            first = first < 0 ? step : first;
            spent += _work.Failing * _work.Price(step);
            _work.Do(step);
            stop = _work.Stop.Cost;
            best = best.OrBetter(new Valuation(spent + _work.Failing * stop, first));
        }

        return best;
    }

    private bool Useful(int fix) => !_work.Done[fix] && _work.Gain[fix] > 1e-15;

    private Candidate BestSingly()
    {
        var best = new Candidate(-1, 0, 1);
        model.Nodes += _work.ActiveCount + 8;
        for (var i = 0; i < _work.ActiveCount; i++)
        {
            var fix = _work.Active[i];
            if (Useful(fix))
            {
                best = best.OrBetter(new Candidate(fix, _work.Gain[fix], _work.Own[fix] + _work.Opening[fix]));
            }
        }

        return best;
    }

    private Candidate BestBlock(Candidate best)
    {
        foreach (var (way, fixes) in _blocks)
        {
            if (_work.OpeningOf(way) is > 0 and var opening)
            {
                model.Nodes += 2 * fixes.Length;
                best = best.OrBetter(Block(fixes, opening));
            }
        }

        return best;
    }

    /// <summary>
    /// The subset with the best ratio when the opening is paid once: everything whose own ratio exceeds the ratio of the whole,
    /// found by raising that ratio until it stands (Dinkelbach 1967). It begins with its best member.
    /// </summary>
    private Candidate Block(int[] fixes, double opening)
    {
        var block = new Candidate(-1, 0, 1);
        while (true)
        {
            var first = new Candidate(-1, 0, 1);
            var (gain, price) = (0.0, opening);
            foreach (var fix in fixes)
            {
                var own = new Candidate(fix, _work.Gain[fix], _work.Own[fix]);
                if (Useful(fix) && _work.Opening[fix] > 0 && own.Beats(block))
                {
                    first = first.OrBetter(own);
                    (gain, price) = (gain + own.Gain, price + own.Price);
                }
            }

            var higher = new Candidate(first.Fix, gain, price);
            if (!higher.Beats(block))
            {
                return block;
            }

            block = higher;
        }
    }

    /// <summary>A fix, or a block by its first fix, with what it gains for its price.</summary>
    private readonly record struct Candidate(int Fix, double Gain, double Price)
    {
        public bool Beats(Candidate other) => Gain * other.Price > other.Gain * Price * (1 + Valuation.Tie);

        public Candidate OrBetter(Candidate other) => other.Beats(this) ? other : this;
    }
}
