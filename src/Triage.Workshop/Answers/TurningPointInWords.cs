using System.Globalization;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Planning;
using Triage.Workshop.Answers.Wording;
using Triage.Workshop.Knowledge;
using Triage.Workshop.Model;

namespace Triage.Workshop.Answers;

/// <summary>What would have to be true for the runner-up to be better, as a repairer would say it.</summary>
internal sealed class TurningPointInWords(BenchKnowledge known, DeviceNetwork network, StepCards cards)
{
    /// <summary>Causes that are tried; one that hardly anybody believes in turns nothing.</summary>
    private const int CausesTried = 3;

    /// <summary>Null when there is no runner-up, or neither a price nor the chance of a leading cause would do it.</summary>
    public string? Of(RepairProblem problem, Advice advice)
    {
        if (TurningPoint.Of(problem, advice) is not { } point)
            return null;
        var (first, second) = (advice.Ranked[0].Option, advice.Ranked[1].Option);
        string[] conditions = [.. new[] { Price(point, problem, first, second), Chance(point, problem) }.OfType<string>()];
        return conditions.Length == 0 ? null : $"“{cards.Of(second.Id).Name}” would be better first if {string.Join(", or if ", conditions)}.";
    }

    private string? Price(TurningPoint point, RepairProblem problem, Option first, Option second) =>
        point.PriceOfSecond() is { } less ? Changed(second.Id is AlwaysThere.Park ? "the working machine were worth" : "it cost", "less", less, second.Expense.At(problem.Rates))
        : point.PriceOfFirst() is { } more ? Changed($"“{cards.Of(first.Id).Name}” cost", "more", more, first.Expense.At(problem.Rates))
        : null;

    /// <summary>With as few digits as tell the two apart; null when none do.</summary>
    private string? Changed(string what, string than, double turning, double now) =>
        new[] { "0", "0.#", "0.##" }.Skip(Math.Min(turning, now) < 10 ? 1 : 0).Select(f => (Turning: Written(turning, f), Now: Written(now, f))).FirstOrDefault(a => a.Turning != a.Now && a.Turning is not ("0" or "-0")) is ({ } t, { } n)
            ? $"{what} {than} than {t} {known.Settings.Currency} (now {n})"
            : null;

    private string? Chance(TurningPoint point, RepairProblem problem)
    {
        var found = Leading(problem).AsParallel().AsOrdered().Select(c => (c.Fault, c.Now, Turning: point.Chance(c.There))).AsSequential()
            .Where(c => c.Turning is not null && Written(100 * c.Turning.Value, "0") != Written(100 * c.Now, "0"))
            .OrderBy(c => Math.Abs(LogOdds(c.Turning!.Value) - LogOdds(c.Now))).FirstOrDefault();
        return found.Turning is { } turning
            ? $"“{WordsFor.CauseName(found.Fault, known.Notes)}” were {(turning > found.Now ? "above" : "below")} {Written(100 * turning, "0")} % (now {Written(100 * found.Now, "0")} %)"
            : null;
    }

    private IEnumerable<(string Fault, double Now, Func<Hypothesis, bool> There)> Leading(RepairProblem problem) => network.ChancesOf(problem.Belief)
        .Select(c => (Fault: c.Key, Now: c.Value))
        .OrderByDescending(c => c.Now).ThenBy(c => c.Fault, StringComparer.Ordinal).Take(CausesTried)
        .Select(c => (c.Fault, c.Now, (Func<Hypothesis, bool>)(h => h.Faulty.Any(f => network.FaultsIn(f.Root, f.State).Contains(c.Fault)))));

    private static double LogOdds(double p) => Math.Log(p / (1 - p));

    private static string Written(double amount, string format) => amount.ToString(format, CultureInfo.InvariantCulture);
}
