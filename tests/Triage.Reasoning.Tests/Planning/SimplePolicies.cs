using Triage.Reasoning.Planning;

namespace Triage.Reasoning.Tests.Planning;

/// <summary>Policies of planner.md to compare with, decided anew in every state.</summary>
internal static class SimplePolicies
{
    /// <summary>Expected cost of a policy to the end of the job.</summary>
    public static double Followed(RepairProblem problem, Func<RepairProblem, Option> choose)
    {
        var option = choose(problem);
        return Oracle.Price(problem, option)
            + Oracle.Outcomes(problem, option).Where(o => o.Probability > 1e-12).Sum(o => o.Probability * Followed(o.Next, choose));
    }

    /// <summary>Fixes by probability over price, as many as lower the expected cost, then stop; never a test.</summary>
    public static Option ProbabilityOverPrice(RepairProblem problem) => BestPrefix(problem).First;

    /// <summary>Below 0.8 for the likeliest hypothesis the test with the most information for its price; then fixes.</summary>
    public static Option InformationFirst(RepairProblem problem)
    {
        if (problem.Belief.Max(h => h.Probability) < 0.8
            && NextStep.Choose(problem, new PlannerBudget(1) { Exact = false }).Ranked
                .Where(r => r.Option is TestOption && r.InformationGain > 1e-12).MaxBy(r => r.InformationGain / r.PriceNow) is { } test)
        {
            return test.Option;
        }

        return BestFix(problem) ?? Stop(problem);
    }

    private static (double Cost, Option First) BestPrefix(RepairProblem problem)
    {
        var (stop, spent, failing, first) = (Stop(problem), 0.0, 1.0, (Option?)null);
        var price = Oracle.Price(problem, stop);
        var best = (Cost: price, First: (Option)stop);
        for (var state = problem; failing > 1e-12 && BestFix(state) is { } fix;)
        {
            first ??= fix;
            spent += failing * Oracle.Price(state, fix);
            var (_, chance, next) = Oracle.Outcomes(state, fix).Single();
            (failing, state) = (failing * chance, next);
            best = spent + failing * price < best.Cost - 1e-9 ? (spent + failing * price, first) : best;
        }

        return best;
    }

    private static Option? BestFix(RepairProblem problem) => Oracle.Ready(problem).OfType<FixOption>()
        .Select(f => (Fix: f, Works: 1 - Oracle.Outcomes(problem, f).Single().Probability))
        .Where(f => f.Works > 1e-12).OrderByDescending(f => f.Works / Oracle.Price(problem, f.Fix)).FirstOrDefault().Fix;

    private static StopOption Stop(RepairProblem problem) => Oracle.Ready(problem).OfType<StopOption>().MinBy(s => Oracle.Price(problem, s))!;
}
