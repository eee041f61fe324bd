using Triage.Reasoning.Inference;
using Triage.Reasoning.Planning;

namespace Triage.Reasoning.Tests.Planning;

/// <summary>
/// The exact optimum of larger problems with ordered tests of two values: depth first, histories with the same belief and the same
/// work done met once, options dropped when a bound from below shows that they cannot win (branch and bound, Land and Doig 1960).
/// Shares no arithmetic with the planner: faults that remain are bit masks, worked out from the problem alone.
/// </summary>
internal sealed class BoundedOracle
{
    private readonly RepairProblem _problem;
    private readonly Option[] _actions;
    private readonly FaultyRoot[] _faults;
    private readonly int[] _masks;
    private readonly double _stop;
    private readonly double[][] _no;
    private readonly (int From, int To, double Chance)[][] _left;
    private readonly Dictionary<int, double[]> _least = [];
    private readonly Dictionary<int, double[]> _prices = [];
    private readonly Dictionary<(int Done, long, long), (double Cost, bool Exact)> _known = [];
    private readonly int _fixBits;

    public BoundedOracle(RepairProblem problem)
    {
        _problem = problem;
        _actions = [.. problem.Options.Where(o => o is not StopOption)];
        _faults = [.. problem.Belief.SelectMany(h => h.Faulty).Distinct()];
        _masks = [.. problem.Belief.Select(MaskOf).SelectMany(Subsets).Distinct()];
        _stop = problem.Options.OfType<StopOption>().Min(s => s.Expense.At(problem.Rates));
        _no = [.. _actions.Select(a => a is TestOption t ? Array.ConvertAll(_masks, m => No(t, m)) : [])];
        _left = [.. _actions.Select(a => a is FixOption f ? _masks.SelectMany((m, i) => Left(f, m).Select(l => (i, Array.IndexOf(_masks, l.Remains), l.Chance))).ToArray() : [])];
        _fixBits = _actions.Index().Sum(a => a.Item is FixOption ? 1 << a.Index : 0);
    }

    public int States => _known.Count;

    /// <param name="atMost">What some policy is known to cost: the optimum is no more, and need not be looked for above it.</param>
    public double Optimum(double atMost = double.PositiveInfinity)
    {
        var start = new double[_masks.Length];
        foreach (var h in _problem.Belief)
        {
            start[Array.IndexOf(_masks, MaskOf(h))] += h.Probability;
        }

        return Cost(start, 0, atMost).Cost;
    }

    /// <summary>The least cost from here; or, not exact, the limit or more when it is no less than that.</summary>
    private (double Cost, bool Exact) Cost(double[] belief, int done, double limit)
    {
        var key = Key(belief, done);
        if (_known.TryGetValue(key, out var known) && (known.Exact || known.Cost >= limit))
        {
            return known;
        }

        var best = _stop;
        var moves = Enumerable.Range(0, _actions.Length).Where(a => (done >> a & 1) == 0).Select(a => Move(belief, done, a)).ToArray();
        foreach (var move in moves.OrderBy(m => m.Bound))
        {
            best = Math.Min(best, Cost(move, Math.Min(best, limit)));
        }

        return _known[key] = best < limit ? (best, true) : (limit, false);
    }

    /// <summary>The cost of a move, infinite when it is no less than the limit: whether a child was cut off is carried, not told from a sum that rounds.</summary>
    private double Cost((double Bound, int Then, List<(double Chance, double[] Next, double Least)> Outcomes) move, double limit)
    {
        var cost = move.Bound;
        foreach (var (chance, next, least) in move.Outcomes)
        {
            var after = cost < limit ? Cost(next, move.Then, ((limit - cost) / chance) + least) : default;
            if (!after.Exact)
            {
                return double.PositiveInfinity;
            }

            cost += chance * (after.Cost - least);
        }

        return cost;
    }

    private (double Bound, int Then, List<(double Chance, double[] Next, double Least)> Outcomes) Move(double[] belief, int done, int action)
    {
        var (bound, then) = (Prices(done)[action], done | (1 << action));
        var least = Least(then & _fixBits);
        var outcomes = new List<(double, double[], double)>();
        foreach (var next in After(belief, action))
        {
            var chance = next.Sum();
            if (chance > 1e-13)
            {
                var cost = 0.0;
                for (var i = 0; i < next.Length; i++)
                {
                    next[i] /= chance;
                    cost += next[i] * least[i];
                }

                outcomes.Add((chance, next, cost));
                bound += chance * cost;
            }
        }

        return (bound, then, outcomes);
    }

    private double[][] After(double[] belief, int action)
    {
        if (_actions[action] is TestOption)
        {
            var no = _no[action];
            return [[.. belief.Select((p, i) => p * no[i])], [.. belief.Select((p, i) => p * (1 - no[i]))]];
        }

        var left = new double[belief.Length];
        foreach (var (from, to, chance) in _left[action])
        {
            left[to] += belief[from] * chance;
        }

        return [left];
    }

    private double[] Prices(int done)
    {
        if (!_prices.TryGetValue(done, out var prices))
        {
            var open = _actions.Where((_, a) => (done >> a & 1) == 1).SelectMany(a => _problem.Access.PathTo(a.Access)).ToHashSet();
            _prices[done] = prices = Array.ConvertAll(_actions, a => a.Expense.At(_problem.Rates)
                + _problem.Access.PathTo(a.Access).Where(s => !open.Contains(s)).Sum(s => s.Minutes * _problem.Rates.ValueOfHour / 60));
        }

        return prices;
    }

    /// <summary>Told which faults remain, one still has to be rid of the dearest of them, or give up; openings are left out.</summary>
    private double[] Least(int fixesDone)
    {
        if (!_least.TryGetValue(fixesDone, out var least))
        {
            double[] alone = [.. Enumerable.Range(0, _faults.Length).Select(f => _actions.OfType<FixOption>()
                .Where(a => (fixesDone >> Array.IndexOf(_actions, a) & 1) == 0).Select(a => (Works: Cleared(a, f), Price: a.Expense.At(_problem.Rates)))
                .Where(c => c.Works > 0).OrderBy(c => c.Works / c.Price)
                .Aggregate(_stop, (cost, c) => Math.Min(cost, c.Price + ((1 - c.Works) * cost))))];
            _least[fixesDone] = least = Array.ConvertAll(_masks, m => alone.Where((_, f) => (m >> f & 1) == 1).Max());
        }

        return least;
    }

    private double No(TestOption test, int mask) => test.Reveals.Links
        .Where(l => (mask >> Array.IndexOf(_faults, new FaultyRoot(l.Root, l.State)) & 1) == 1)
        .Aggregate(test.Reveals.Ambient[0], (p, l) => p * l.Produces[0]);

    private IEnumerable<(int Remains, double Chance)> Left(FixOption fix, int mask) => Subsets(mask)
        .Select(rest => (rest, Enumerable.Range(0, _faults.Length).Where(f => (mask >> f & 1) == 1)
            .Aggregate(1.0, (p, f) => p * ((rest >> f & 1) == 1 ? 1 - Cleared(fix, f) : Cleared(fix, f)))))
        .Where(l => l.Item2 > 0);

    private double Cleared(FixOption fix, int fault) =>
        fix.Clears.Where(c => c.Root == _faults[fault].Root && c.State == _faults[fault].State).Sum(c => c.Works * c.Holds);

    private int MaskOf(Hypothesis hypothesis) => hypothesis.Faulty.Sum(f => 1 << Array.IndexOf(_faults, f));

    /// <summary>Every subset but the empty one.</summary>
    private static IEnumerable<int> Subsets(int mask)
    {
        for (var rest = mask; rest > 0; rest = (rest - 1) & mask)
        {
            yield return rest;
        }
    }

    private static (int Done, long A, long B) Key(double[] belief, int done)
    {
        var (a, b) = (17L, 31L);
        foreach (var weight in belief)
        {
            var rounded = (long)Math.Round(weight * 1e11);
            unchecked
            {
                a = (a ^ rounded) * 6364136223846793005L + 1442695040888963407L;
                b = (b + rounded) * 2862933555777941757L ^ (b >> 29);
            }
        }

        return (done, a, b);
    }
}
