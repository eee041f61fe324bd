using Triage.Reasoning.Inference;
using Triage.Reasoning.Learning;
using Triage.Reasoning.Planning;
using Triage.Reasoning.Tests.Inference;
using Triage.Reasoning.Tests.Planning;

namespace Triage.Benchmarks;

/// <summary>How things compare with each other and how they grow: ratios of medians within one run, which a busy machine leaves alone.</summary>
internal static class Ratios
{
    private const int Cases = 12;

    public static void Print(TextWriter to)
    {
        AgainstSlowWays(to);
        Growth(to);
        Questions(to);
        Planner(to);
        LearningGrowth.Print(to);
    }

    private static void AgainstSlowWays(TextWriter to)
    {
        Case[] small = [.. Seeds.Select(s => Case.Of(s, roots: 7, findings: 8, links: 6, abnormal: 4, normal: 3))];
        var product = Measure.Median(small, Posterior);
        Line(to, "every combination of states / posterior (7 roots)", Measure.Median(small, c => NaiveEnumeration.Of(c.Network, c.Evidence)) / product);
        Line(to, "every state and fate / posterior (7 roots)", Measure.Median(small.Take(3).ToArray(), c => BruteForce.Of(c.Network, c.Evidence), best: 1) / product);
    }

    private static void Growth(TextWriter to)
    {
        var unit = Sized(250, 12);
        Line(to, "posterior: 500 roots / 250", Sized(500, 12) / unit);
        Line(to, "posterior: 1000 roots / 250", Sized(1000, 12) / unit);
        Line(to, "posterior: 6 abnormal / 12", Sized(250, 6) / unit);
        Line(to, "posterior: 18 abnormal / 12", Sized(250, 18) / unit);
        Line(to, "posterior: 24 abnormal / 12", Sized(250, 24) / unit);

        static double Sized(int roots, int abnormal) => Measure.Median(
            Seeds.Select(s => Case.Of(s, roots, findings: roots * 3 / 5, links: 30, abnormal, normal: 40)).ToArray(), Posterior);
    }

    private static void Questions(TextWriter to)
    {
        Case[] large = [.. Seeds.Select(Case.Large)];
        var posterior = Measure.Median(large, Posterior);
        Line(to, "400 hypotheses / posterior (500 roots)", Measure.Median(large, c => Hypotheses.Of(c.Network, c.Evidence, 400, 1e-4)) / posterior);
        Line(to, "2000 hypotheses / posterior (500 roots)", Measure.Median(large, c => Hypotheses.Of(c.Network, c.Evidence)) / posterior);
        Line(to, "intervals / posterior (500 roots)", Measure.Median(large, c => SampledIntervals.Of(c.Network, c.Evidence, seed: 1), best: 1) / posterior);
        Line(to, "weights of 52 findings / posterior (500 roots)", Measure.Median(large, c => WeightOfEvidence.Of(c.Network, c.Evidence), best: 1) / posterior);
        Line(to, "sensitivity / posterior (500 roots)", Measure.Median(large, c => Sensitivity.Of(c.Network, c.Evidence), best: 1) / posterior);
    }

    private static void Planner(TextWriter to)
    {
        RepairProblem[] problems = [.. Seeds.Select(s => RandomProblem.From(s))];
        var exact = Measure.Median(problems, p => NextStep.Choose(p, PlannerBudget.Default));
        Line(to, "best-first search / exact programme (5 options)", Measure.Median(problems, p => NextStep.Choose(p, PlannerBudget.Default with { Exact = false })) / exact);
        Line(to, "every history / exact programme (5 options)", Measure.Median(problems, p => Oracle.Optimum(p), best: 1) / exact);
        RepairProblem[] large = [.. Seeds.Select(s => Plans.Large(s, stop: 80))];
        var tests = Measure.Median(large, Searched);
        Line(to, "next step with 10 rounds / with tests alone (500 roots)", Measure.Median([.. large.Select(p => Plans.WithRounds(p, 10))], Searched) / tests);

        static object Searched(RepairProblem problem) => NextStep.Choose(problem, new(500_000));
    }

    private static IEnumerable<int> Seeds => Enumerable.Range(0, Cases);

    private static object Posterior(Case c) => PosteriorInference.Of(c.Network, c.Evidence);

    private static void Line(TextWriter to, string what, double ratio) => to.WriteLine(FormattableString.Invariant($"{what,-58} {ratio,10:G3}"));
}
