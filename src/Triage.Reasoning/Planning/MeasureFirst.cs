namespace Triage.Reasoning.Planning;

/// <summary>
/// Measure before mending: a fix waits for a direct check while (1 − p) · price of the fix, what is thrown away on average when it
/// was not that, is no less than the price of the check; p is the belief that something it clears is there. Harm is in
/// the prices. An opening that both need counts for neither: it is paid whichever comes first.
/// </summary>
internal sealed class MeasureFirst(RepairProblem problem, OrderOfWork order, AccessWays ways, double[] price)
{
    /// <summary>By option: the checks of which one has to be done before it, the one that saves most first; empty where it need not wait.</summary>
    /// <param name="done">By option.</param>
    public int[][] Checks(bool[] done)
    {
        var number = problem.Options.Select((o, i) => (o.Id, i)).ToDictionary(o => o.Id, o => o.i);
        return [.. problem.Options.Select((o, i) => o is FixOption { CheckedBy.IsEmpty: false } fix && order.Allowed[i] && !done[i] && !IsChecked(fix, number, done)
            ? Worthwhile(fix, i, [.. fix.CheckedBy.Where(number.ContainsKey).Select(id => number[id]).Where(CanBeDone)], done) : [])];
    }

    private bool IsChecked(FixOption fix, Dictionary<string, int> number, bool[] done) =>
        fix.CheckedBy.Any(id => problem.Done.Contains(id) || (number.TryGetValue(id, out var check) && done[check]));

    /// <summary>A check that has itself to wait for a fix holds up none.</summary>
    private bool CanBeDone(int check) =>
        problem.Options[check] is TestOption or RoundOption && order.Allowed[check] && order.Earlier(check).All(o => problem.Options[o] is not FixOption);

    private int[] Worthwhile(FixOption fix, int number, int[] checks, bool[] done)
    {
        var inVain = 1 - Belief(fix);
        var saves = checks.Select(check => (Check: check, Saves: (inVain * Beyond(number, check, done)) - Beyond(check, number, done))).OrderByDescending(c => c.Saves).ToArray();
        return saves is [{ Saves: >= 0 }, ..] ? Array.ConvertAll(saves, c => c.Check) : [];
    }

    private double Belief(FixOption fix)
    {
        var clears = ClearanceBuilder.Clearable(fix).Select(ClearanceBuilder.Named).ToHashSet();
        return problem.Belief.Where(h => h.Faulty.Any(clears.Contains)).Sum(h => h.Probability);
    }

    /// <summary>Price of an option with all that must come before it, less what another needs as well.</summary>
    private double Beyond(int option, int other, bool[] done) =>
        order.Missing(option, done).Except(order.Missing(other, done)).Where(o => o != other).Append(option).Sum(o => price[o]) + ways.OpeningBeyond(option, other);
}
