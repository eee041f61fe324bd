using Triage.Reasoning.Inference;

namespace Triage.Reasoning.Planning;

/// <summary>
/// What would have to be true for the runner-up to be as good as the step advised: the break-even of a price or of a probability
/// (threshold analysis, as in Pauker and Kassirer 1980). How the difference moves is worked out by the exact programme on small
/// problems, by one-step look-ahead on others; where it stands is what the advice says.
/// </summary>
public sealed class TurningPoint
{
    /// <summary>What the exact programme may take for one trial, in nodes: a break-even takes some ten trials.</summary>
    private const int Nodes = 100_000;

    private readonly RepairProblem _problem;
    private readonly RankedOption _first;
    private readonly RankedOption _second;
    private readonly bool _exactly;
    private readonly double _offset;

    private TurningPoint(RepairProblem problem, RankedOption first, RankedOption second)
    {
        (_problem, _first, _second) = (problem, first, second);
        _exactly = Exactly(problem) is not null;
        _offset = second.ExpectedCost - first.ExpectedCost - Difference(problem);
    }

    /// <summary>Null when nothing else may be done.</summary>
    public static TurningPoint? Of(RepairProblem problem, Advice advice) =>
        advice.Ranked is [var first, var second, ..] ? new(problem, first, second) : null;

    /// <summary>Own price of the runner-up, opening left out, at which the two cost the same; null when none above 0 does.</summary>
    public double? PriceOfSecond() => Root(price => Gap(At(_second.Option, price)), Own(_second.Option), 0);

    /// <summary>Own price of the step advised, opening left out, at which the two cost the same; null when none does.</summary>
    public double? PriceOfFirst()
    {
        var own = Own(_first.Option);
        var enough = own + _second.ExpectedCost + _problem.Options.OfType<StopOption>().Where(o => o.Blocked is null).Min(Own);
        return Root(price => Gap(At(_first.Option, price)), own, enough);
    }

    /// <summary>
    /// Probability of "there" at which the two cost the same, everything else in the same proportion: the nearer in odds of the
    /// one above and the one below today's; null when there is neither, or it is certain either way.
    /// </summary>
    public double? Chance(Func<Hypothesis, bool> there)
    {
        var now = _problem.Belief.Where(there).Sum(h => h.Probability);
        if (now is <= 1e-9 or >= 1 - 1e-9)
        {
            return null;
        }

        double?[] found = [.. new[] { 1.0, 0.0 }.Select(end => Root(p => Gap(Reweighed(there, now, p)), now, end))];
        return found.Where(p => p is > 0 and < 1).MinBy(p => Math.Abs(LogOdds(p!.Value) - LogOdds(now)));
    }

    private double Own(Option option) => option.Price(_problem.Rates);

    private RepairProblem At(Option option, double price) => _problem with
    {
        Options = _problem.Options.Replace(option, option with { Expense = Costing(Math.Max(0, price)) }),
    };

    /// <summary>The handling is in the price.</summary>
    private Expense Costing(double price)
    {
        var handling = new Expense(_problem.Rates.HandlingMinutes);
        return handling with { Money = price - handling.At(_problem.Rates) };
    }

    private RepairProblem Reweighed(Func<Hypothesis, bool> there, double now, double chance) => _problem with
    {
        Belief = [.. _problem.Belief.Select(h => h with { Probability = h.Probability * (there(h) ? chance / now : (1 - chance) / (1 - now)) }).Where(h => h.Probability > 0)],
    };

    private double Gap(RepairProblem problem) => _offset + Difference(problem);

    /// <summary>Expected cost of the runner-up less that of the step advised.</summary>
    private double Difference(RepairProblem problem)
    {
        if (_exactly && Exactly(problem) is { } exactly)
        {
            return exactly;
        }

        var model = new PlanningModel(problem);
        return Difference(model, new OneStepLookAhead(model));
    }

    /// <summary>Null when it takes more thought than there is.</summary>
    private double? Exactly(RepairProblem problem)
    {
        var model = new PlanningModel(problem);
        if (!ExactProgramme.Fits(model, Nodes))
        {
            return null;
        }

        var exact = new ExactProgramme(model, new OneStepLookAhead(model), Nodes);
        var difference = Difference(model, exact);
        return exact.Complete ? difference : null;
    }

    private double Difference(PlanningModel model, IContinuation after) => Cost(model, after, _second.Option.Id) - Cost(model, after, _first.Option.Id);

    private static double Cost(PlanningModel model, IContinuation after, string id) =>
        after.CostOf(model, model.Start, Array.FindIndex(model.Options, o => o.Id == id));

    private static double LogOdds(double p) => Math.Log(p / (1 - p));

    /// <summary>
    /// Where the gap becomes 0 between here, where it is positive, and an end; null when it is still positive there. False position
    /// with halved weights (the Illinois rule, Dowell and Jarratt 1971): exact at once where the gap is linear, as it is in a price
    /// while the plan stays the same.
    /// </summary>
    private static double? Root(Func<double, double> gap, double here, double end)
    {
        var (a, atA, b, atB) = (here, gap(here), end, gap(end));
        if (atA <= 0 || atB > 0)
        {
            return atA <= 0 ? here : null;
        }

        var (scale, side) = (atA - atB, 0);
        for (var trial = 0; trial < 30 && scale > 0; trial++)
        {
            var x = ((a * atB) - (b * atA)) / (atB - atA);
            var at = gap(x);
            if (Math.Abs(at) <= 1e-9 * scale)
            {
                return x;
            }

            if (at > 0)
            {
                (a, atA, atB) = (x, at, side > 0 ? atB / 2 : atB);
                side = 1;
            }
            else
            {
                (b, atB, atA) = (x, at, side < 0 ? atA / 2 : atA);
                side = -1;
            }
        }

        return (a + b) / 2;
    }
}
