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
        if (Options.Length > 2 * Shortlist)
        {
            Value(Options, new SettledSequence(model), ignoring);
        }

        Value(_known.Count == 0 ? Options : [.. Best(Shortlist)], oneStep, ignoring);
    }

    /// <summary>Options that get a closer look where there are many. Chosen by trial.</summary>
    private const int Shortlist = 24;

    public OneStepLookAhead OneStep { get; }

    public int[] Options { get; }

    /// <summary>Values the best few anew by a deeper continuation; what is not finished when it runs out is dropped.</summary>
    public void Refine(IContinuation deeper, Func<bool> complete)
    {
        var found = new Dictionary<int, Appraisal>();
        foreach (var option in Best(Shortlist))
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

    /// <summary>By option: whether it is among the shortlist of tests and fixes, or not ready yet.</summary>
    public bool[] Worth()
    {
        var best = Best(Options.Length).Where(o => _model.Options[o] is not StopOption).Take(Shortlist).ToHashSet();
        return [.. _model.Numbers.Select(o => _model.Options[o] is not StopOption && (best.Contains(o) || !_known.ContainsKey(o)))];
    }

    public ImmutableArray<RankedOption> Describe()
    {
        var best = Options.Aggregate(Valuation.None, (b, o) => b.OrBetter(new Valuation(_known[o].Cost, o))).First;
        return [.. Options.OrderBy(o => o != best).ThenBy(o => _known[o].Cost).Select(Describe)];
    }

    private IEnumerable<int> Best(int few) => Options.OrderBy(o => _known[o].Cost).Take(few);

    private void Value(int[] options, IContinuation continuation, Valuation ignoring)
    {
        foreach (var option in options)
        {
            _known[option] = OneStep.CanPay(_model.Start, option, ignoring.Cost) ? Appraise(option, continuation) : Ignored(option, ignoring);
        }
    }

    private Appraisal Appraise(int option, IContinuation continuation)
    {
        var cost = _model.Price(option, _model.Start.Open);
        var outcomes = new List<(Outcome, Valuation)>();
        foreach (var outcome in _model.Outcomes(_model.Start, option))
        {
            var after = outcome.Next is { } next ? continuation.From(next) : new Valuation(0, -1);
            outcomes.Add((outcome with { Next = null }, after));
            cost += outcome.Probability * after.Cost;
        }

        return new Appraisal(cost, [.. outcomes]);
    }

    private Appraisal Ignored(int test, Valuation after)
    {
        var chances = _model.Likelihood(test).Select((row, value) => new Outcome(row.Multiply(_model.Start.Belief, new double[_model.Space.Count]), value, null));
        return new(_model.Price(test, _model.Start.Open) + after.Cost, [.. chances.Where(o => o.Probability > 0).Select(o => (o, after))]);
    }

    private RankedOption Describe(int option)
    {
        var open = _model.Start.Open;
        var branches = _known[option].Outcomes.Select(o => Describe(option, o.Seen, o.After));
        return new RankedOption(
            _model.Options[option], _known[option].Cost, _model.Price(option, open), [.. _model.Ways.Opens(option, open)],
            [.. branches.OrderByDescending(b => b.Probability)], InformationGain.Bits(_model, option, _known[option].Outcomes.Select(o => o.Seen.Probability)));
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
    /// <param name="Outcomes">What can come of it, and what follows.</param>
    private sealed record Appraisal(double Cost, (Outcome Seen, Valuation After)[] Outcomes);
}
