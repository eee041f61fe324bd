using System.Collections.Immutable;

namespace Triage.Reasoning.Planning;

/// <summary>The options that are ready now with the best cost known for each; refined as more is looked at.</summary>
internal sealed class RootRanking
{
    private readonly PlanningModel _model;
    private readonly Dictionary<int, Appraisal> _known = [];

    public RootRanking(PlanningModel model, OneStepLookAhead oneStep)
    {
        (_model, OneStep) = (model, oneStep);
        Options = [.. model.ReadyOptions(model.Start)];
        var ignoring = oneStep.From(model.Start);
        foreach (var option in Options)
        {
            _known[option] = oneStep.CanPay(model.Start, option, ignoring.Cost) ? Appraise(option, oneStep) : Ignored(option, ignoring);
        }
    }

    public OneStepLookAhead OneStep { get; }

    public int[] Options { get; }

    /// <summary>Values the best few anew by a deeper continuation; what is not finished when it runs out is dropped.</summary>
    public void Refine(IContinuation deeper, int few, Func<bool> complete)
    {
        var found = new Dictionary<int, Appraisal>();
        foreach (var option in Options.OrderBy(o => _known[o].Cost).Take(few))
        {
            found[option] = Appraise(option, deeper);
            if (!complete())
            {
                return;
            }
        }

        foreach (var (option, appraisal) in found)
        {
            _known[option] = appraisal;
        }
    }

    /// <summary>By option: whether it is among the best few tests and fixes, or not ready yet.</summary>
    public bool[] Worth(int few)
    {
        var best = Options.OrderBy(o => _known[o].Cost).Where(o => _model.Options[o] is not StopOption).Take(few).ToHashSet();
        return [.. _model.Numbers.Select(o => _model.Options[o] is not StopOption && (best.Contains(o) || !_known.ContainsKey(o)))];
    }

    public ImmutableArray<RankedOption> Describe()
    {
        var best = Options.Aggregate(Valuation.None, (b, o) => b.OrBetter(new Valuation(_known[o].Cost, o))).First;
        return [.. Options.OrderBy(o => o != best).ThenBy(o => _known[o].Cost).Select(Describe)];
    }

    private Appraisal Appraise(int option, IContinuation continuation)
    {
        var cost = _model.Price(option, _model.Start.Open);
        var after = new List<Valuation>();
        foreach (var outcome in _model.Outcomes(_model.Start, option))
        {
            after.Add(outcome.Next is { } next ? continuation.From(next) : new Valuation(0, -1));
            cost += outcome.Probability * after[^1].Cost;
        }

        return new Appraisal(cost, [.. after]);
    }

    private Appraisal Ignored(int test, Valuation after) => new(
        _model.Price(test, _model.Start.Open) + after.Cost, [.. _model.Likelihood(test).Select(_ => after)]);

    private RankedOption Describe(int option)
    {
        var open = _model.Start.Open;
        var outcomes = _model.Outcomes(_model.Start, option).Select(o => o with { Next = null }).ToArray();
        var branches = outcomes.Zip(_known[option].After, (o, after) => Describe(option, o, after));
        return new RankedOption(
            _model.Options[option], _known[option].Cost, _model.Price(option, open), [.. _model.Ways.Opens(option, open)],
            [.. branches.OrderByDescending(b => b.Probability)], InformationGain.Bits(_model, option, outcomes));
    }

    private Branch Describe(int option, Outcome outcome, Valuation after)
    {
        var name = outcome.Value switch
        {
            Outcome.Works => "works",
            JobStep.StillFaulty => "still faulty",
            var value => ((TestOption)_model.Options[option]).Reveals.Values[value],
        };
        return new Branch(name, outcome.Probability, after.Cost, after.First < 0 ? null : _model.Options[after.First].Id);
    }

    /// <param name="Cost">Price now and what is expected after it.</param>
    /// <param name="After">One for each outcome.</param>
    private sealed record Appraisal(double Cost, Valuation[] After);
}
