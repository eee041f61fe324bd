using System.Collections.Immutable;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Planning;

/// <summary>The options that are ready now with the best cost known for each; refined as more is looked at.</summary>
internal sealed class RootRanking
{
    /// <summary>Looks that cost up to this much more than the best are asked what comes after them anyway.</summary>
    private const double Near = 1.05;

    private readonly PlanningModel _model;
    private readonly Dictionary<int, Appraisal> _known = [];
    private readonly int[] _shortlist;
    private IContinuation _plan;

    /// <param name="shortlist">By option: whether it is worth a closer look.</param>
    public RootRanking(PlanningModel model, OneStepLookAhead oneStep, bool[] shortlist)
    {
        (_model, OneStep, _plan) = (model, oneStep, oneStep);
        Options = [.. model.ReadyOptions(model.Start)];
        var ignoring = oneStep.From(model.Start);
        _shortlist = [.. Options.Where(o => shortlist[o])];
        foreach (var option in Options)
        {
            _known[option] = Ignored(option, ignoring);
        }

        foreach (var option in _shortlist.Where(o => oneStep.CanPay(model.Start, o, ignoring.Cost)))
        {
            _known[option] = Appraise(option, oneStep);
        }
    }

    public OneStepLookAhead OneStep { get; }

    public int[] Options { get; }

    /// <summary>Values the best few anew by a deeper continuation; what is not finished when it runs out is dropped.</summary>
    public void Refine(IContinuation deeper, Func<bool> complete)
    {
        var found = new Dictionary<int, Appraisal>();
        foreach (var option in _shortlist.OrderBy(o => _known[o].Cost))
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

        _plan = deeper;
    }

    /// <summary>By option: whether it is among the shortlist of tests and fixes, or not ready yet.</summary>
    public bool[] Worth()
    {
        var worth = _shortlist.ToHashSet();
        return [.. _model.Numbers.Select(o => _model.Options[o] is not StopOption && (worth.Contains(o) || !_known.ContainsKey(o)))];
    }

    public ImmutableArray<RankedOption> Describe(LeadingCause leader)
    {
        var best = Options.Aggregate(Valuation.None, (b, o) => b.OrBetter(new Valuation(_known[o].Cost, o)));
        var near = _shortlist.Where(o => _known[o].Cost <= best.Cost * Near).ToHashSet();
        var anyway = new ComesAnyway(_model, _plan, leader);
        return [.. Options.OrderBy(o => o != best.First).ThenBy(o => _known[o].Cost).Select(o => Describe(o) with
        {
            OnLeadingCause = leader.IsMetBy(_model.Options[o]),
            ThenAnyway = near.Contains(o) ? anyway.After(o) : null,
        })];
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

    /// <summary>As if what comes of it changed nothing in what is done after it: never too low.</summary>
    private Appraisal Ignored(int option, Valuation ignoring)
    {
        var price = _model.Price(option, _model.Start.Open);
        return _model.Options[option] switch
        {
            _ when _model.Looks.Has(option) => new(price + ignoring.Cost, [.. _model.Chances(option).Select((p, value) => (new Outcome(p, value, null), ignoring)).Where(o => o.Item1.Probability > 0)]),
            FixOption => IgnoredFix(option, price, ignoring),
            _ => new(price, []),
        };
    }

    private Appraisal IgnoredFix(int fix, double price, Valuation ignoring)
    {
        var clearance = _model.Space.Clearances[fix]!;
        var works = clearance.Sum(_model.Start.Belief, clearance.Works);
        var after = works < 1 ? ignoring with { Cost = Math.Min(ignoring.Cost / (1 - works), _model.CheapestStop(_model.Start.Done, _model.Start.Open).Cost) } : ignoring;
        (Outcome, Valuation)[] outcomes = [(new(works, Outcome.Works, null), new(0, -1)), (new(1 - works, JobStep.StillFaulty, null), after)];
        return new(price + (1 - works) * after.Cost, [.. outcomes.Where(o => o.Item1.Probability > 0)]);
    }

    private RankedOption Describe(int option)
    {
        var open = _model.Start.Open;
        var branches = _known[option].Outcomes.Select(o => Describe(option, o.Seen, o.After));
        return new RankedOption(
            _model.Options[option], _known[option].Cost, _model.Price(option, open), [.. _model.Ways.Opens(option, open)],
            [.. branches.OrderByDescending(b => b.Probability)], InformationGain.Bits(_model, option, _known[option].Outcomes.Select(o => o.Seen.Probability)))
        {
            Rows = _model.Options[option] is RoundOption round ? [.. round.Reveals.Where(f => !_model.Looks.IsKnown(f, _model.Start.Done)).Select(Describe)] : [],
        };
    }

    private RoundRow Describe(Finding finding)
    {
        var rows = _model.Looks.Rows(finding);
        return new(finding, 1 - rows[0].Expect(_model.Start.Belief, p => p), InformationGain.Bits(rows, _model.Start.Belief));
    }

    private Branch Describe(int option, Outcome outcome, Valuation after)
    {
        var (finding, name) = outcome.Value switch
        {
            Outcome.Works => (null, "works"),
            JobStep.StillFaulty => (null, "still faulty"),
            var shown => _model.Looks.Of(option, _model.Start.Done).Shows[shown],
        };
        return new Branch(name, outcome.Probability, after.Cost, after.First < 0 ? null : _model.Options[after.First].Id) { Finding = finding };
    }

    /// <param name="Cost">Price now and what is expected after it.</param>
    /// <param name="Outcomes">What can come of it, and what follows.</param>
    private sealed record Appraisal(double Cost, (Outcome Seen, Valuation After)[] Outcomes);
}
