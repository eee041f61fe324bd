namespace Triage.Reasoning.Planning;

/// <summary>Where there are many options, a short look at all of them says which are worth a closer one.</summary>
internal static class Screening
{
    /// <summary>Options that get a closer look where there are many, and hypotheses that count in choosing them. Chosen by trial.</summary>
    private const int Shortlist = 24, Heaviest = 100;

    /// <summary>By option: whether it is worth a closer look, judged by the heaviest hypotheses and a settled sequence of fixes after each outcome.</summary>
    public static bool[] Worth(RepairProblem problem)
    {
        if (problem.Options.Length <= 2 * Shortlist)
        {
            return [.. problem.Options.Select(_ => true)];
        }

        var model = new PlanningModel(problem with { Belief = [.. problem.Belief.OrderByDescending(h => h.Probability).Take(Heaviest)] });
        var after = new SettledSequence(model);
        var ready = model.ReadyOptions(model.Start).ToHashSet();
        var best = ready.Where(o => model.Options[o] is not StopOption).OrderBy(o => after.CostOf(model, model.Start, o)).Take(Shortlist).ToHashSet();
        return [.. model.Numbers.Select(o => best.Contains(o) || !ready.Contains(o) || model.Options[o] is StopOption)];
    }
}
