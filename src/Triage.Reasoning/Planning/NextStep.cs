using System.Collections.Immutable;

namespace Triage.Reasoning.Planning;

/// <summary>Where the next step is chosen: least expected cost to a working machine, or to giving up.</summary>
public static class NextStep
{
    /// <summary>
    /// Ranks everything that may be done now. First one-step look-ahead over all options, what follows valued by the best
    /// sequence of fixes with a stop; then the exact programme where it fits the budget, else ever wider roll-outs of the best.
    /// The same question with the same budget always gets the same answer.
    /// </summary>
    /// <exception cref="ArgumentException">The problem contradicts itself or no stop is allowed; the message says where.</exception>
    public static Advice Choose(RepairProblem problem, PlannerBudget budget)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(budget.Nodes);
        ProblemCheck.Check(problem);
        var model = new PlanningModel(problem);
        var ranking = new RootRanking(model, new OneStepLookAhead(model));
        if (!budget.Exact || !SolveExactly(model, ranking, budget))
        {
            RollOut(model, ranking, budget);
        }

        var blocked = problem.Options.Where(o => !problem.Done.Contains(o.Id)).Select(o => WhyNot(o, problem)).OfType<BlockedOption>();
        return new Advice(ranking.Describe(), [.. blocked], (int)Math.Min(model.Nodes, int.MaxValue));
    }

    /// <summary>Options that are followed first. Chosen by trial.</summary>
    private const int Few = 4;

    private static bool SolveExactly(PlanningModel model, RootRanking ranking, PlannerBudget budget)
    {
        if (!ExactProgramme.Fits(model, budget.Nodes))
        {
            return false;
        }

        var exact = new ExactProgramme(model, ranking.OneStep, model.Nodes + budget.Nodes);
        ranking.Refine(exact, ranking.Options.Length, () => exact.Complete);
        return exact.Complete;
    }

    /// <summary>First the likely courses only, so that a large problem gets something; then to the end, wider and wider.</summary>
    private static void RollOut(PlanningModel model, RootRanking ranking, PlannerBudget budget)
    {
        var search = new WideningSearch(model, ranking.OneStep, ranking.Worth(), budget.Nodes);
        foreach (var (width, leastReach) in Widths())
        {
            search.Widen(width, leastReach);
            ranking.Refine(search, Few * width, () => search.Complete);
            if (!search.Complete || search.Exhaustive)
            {
                return;
            }
        }
    }

    /// <summary>Where a state is likely to be reached, a second look at it is worth more.</summary>
    private static IEnumerable<(int Width, double LeastReach)> Widths()
    {
        yield return (1, 0.1);
        yield return (1, 0);
        for (var width = 2; ; width++)
        {
            foreach (var leastReach in new[] { 0.3, 0.1, 0.03, 0.01, 0 })
            {
                yield return (width, leastReach);
            }
        }
    }

    private static BlockedOption? WhyNot(Option option, RepairProblem problem)
    {
        if (option.Blocked is { } rule)
        {
            return new BlockedOption(option, rule);
        }

        var missing = option.After.Where(id => !problem.Done.Contains(id)).ToImmutableArray();
        var unknown = missing.FirstOrDefault(id => problem.Options.All(o => o.Id != id));
        return missing switch
        {
            [] => null,
            _ when unknown is not null => new BlockedOption(option, $"comes after \"{unknown}\", which is neither done nor among the options"),
            _ => new BlockedOption(option, $"comes after {string.Join(", ", missing.Select(id => $"\"{id}\""))}"),
        };
    }
}
