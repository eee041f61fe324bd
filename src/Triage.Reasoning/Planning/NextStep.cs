using System.Collections.Immutable;

namespace Triage.Reasoning.Planning;

/// <summary>Where the next step is chosen: least expected cost to a working machine, or to giving up.</summary>
public static class NextStep
{
    /// <summary>
    /// Ranks everything that may be done now. First one-step look-ahead over all options (<see cref="Screening"/> picks among
    /// many), what follows valued by the best sequence of fixes with a stop; then the exact programme where it fits the budget, else best-first search within it.
    /// The same question with the same budget always gets the same answer.
    /// </summary>
    /// <exception cref="ArgumentException">The problem contradicts itself or no stop is allowed; the message says where.</exception>
    public static Advice Choose(RepairProblem problem, PlannerBudget budget)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(budget.Nodes);
        ProblemCheck.Check(problem);
        var (model, worth) = Prepare(problem);
        var ranking = new RootRanking(model, new OneStepLookAhead(model), worth);
        if (!budget.Exact || !SolveExactly(model, ranking, budget))
        {
            Search(model, ranking, budget);
        }

        var blocked = problem.Options.Where(o => !problem.Done.Contains(o.Id)).Select(o => WhyNot(o, problem) ?? MeasureFirst(o, model)).OfType<BlockedOption>();
        return new Advice(ranking.Describe(new LeadingCause(problem)), [.. blocked], (int)Math.Min(model.Nodes, int.MaxValue));
    }

    private static (PlanningModel Model, bool[] Worth) Prepare(RepairProblem problem)
    {
        var worth = Task.Run(() => Screening.Worth(problem));
        return (new PlanningModel(problem), worth.GetAwaiter().GetResult());
    }

    private static bool SolveExactly(PlanningModel model, RootRanking ranking, PlannerBudget budget)
    {
        if (!ExactProgramme.Fits(model, budget.Nodes))
        {
            return false;
        }

        var exact = new ExactProgramme(model, ranking.OneStep, model.Nodes + budget.Nodes);
        ranking.Refine(exact, () => exact.Complete);
        return exact.Complete;
    }

    private static void Search(PlanningModel model, RootRanking ranking, PlannerBudget budget)
    {
        var search = new BestFirstSearch(model, ranking.OneStep, ranking.Worth());
        search.Run(until: model.Nodes + budget.Nodes);
        ranking.Refine(search, () => true);
    }

    private static BlockedOption? MeasureFirst(Option option, PlanningModel model) =>
        model.Rules.CheckOf(Array.IndexOf(model.Options, option), model.Start.Done) is { } check
            ? new(option, $"Measure first: {model.Options[check].Id}.") { MeasureFirst = model.Options[check].Id } : null;

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
