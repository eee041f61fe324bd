using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Planning;

/// <summary>Refuses a problem that cannot be planned, saying what is wrong where and what to do.</summary>
internal static class ProblemCheck
{
    public static void Check(RepairProblem problem)
    {
        CheckBelief(problem);
        CheckIds(problem);
        CheckAccess(problem);
        foreach (var option in problem.Options)
        {
            CheckOption(problem, option);
        }

        if (!problem.Options.Any(o => o is StopOption && o.Blocked is null && o.After.All(problem.Done.Contains)))
        {
            throw Wrong("there is no stop option that is allowed now; add one (park, part out, hand over), so that giving up has a price");
        }
    }

    private static void CheckBelief(RepairProblem problem)
    {
        foreach (var hypothesis in problem.Belief)
        {
            Require(double.IsFinite(hypothesis.Probability) && hypothesis.Probability >= 0,
                $"a hypothesis has probability {hypothesis.Probability}; it must be a number from 0 to 1");
        }

        var sum = problem.Belief.Sum(h => h.Probability);
        Require(Math.Abs(sum - 1) < 1e-6, $"the probabilities of the hypotheses sum to {sum}, not 1; put what was left out in as the unlisted fault");
    }

    private static void CheckIds(RepairProblem problem)
    {
        var twice = problem.Options.GroupBy(o => o.Id).FirstOrDefault(g => g.Count() > 1)?.Key;
        Require(twice is null, $"two options have the id \"{twice}\"; ids must differ");
        var step = problem.Access.Steps.GroupBy(s => s.Id).FirstOrDefault(g => g.Count() > 1)?.Key;
        Require(step is null, $"two access steps have the id \"{step}\"; ids must differ");
    }

    private static void CheckAccess(RepairProblem problem)
    {
        var parents = problem.Access.Steps.ToDictionary(s => s.Id, s => s.Behind);
        foreach (var step in problem.Access.Steps)
        {
            Require(step.Minutes >= 0, $"access step \"{step.Id}\" takes {step.Minutes} minutes; it must be 0 or more");
            var seen = new HashSet<string>();
            for (var at = step.Id; at is not null; at = parents[at])
            {
                Require(parents.ContainsKey(at), $"access step \"{step.Id}\" is behind \"{at}\", which is not in the access tree");
                Require(seen.Add(at), $"access step \"{step.Id}\" is behind itself; correct what it is behind");
            }
        }

        foreach (var open in problem.Open)
        {
            Require(parents.ContainsKey(open), $"\"{open}\" is said to be open, but the access tree has no such step");
        }
    }

    private static void CheckOption(RepairProblem problem, Option option)
    {
        var price = option.Price(problem.Rates);
        Require(double.IsFinite(price) && price >= 0, $"option \"{option.Id}\" costs {price}; a price must be 0 or more");
        Require(option.Access is null || problem.Access.Steps.Any(s => s.Id == option.Access),
            $"option \"{option.Id}\" needs access step \"{option.Access}\", which is not in the access tree");
        if (option is FixOption fix)
        {
            CheckFix(fix);
        }

        if (option is TestOption test)
        {
            CheckFinding(test.Id, test.Reveals);
        }

        if (option is RoundOption round)
        {
            CheckRound(round);
        }
    }

    private static void CheckFix(FixOption fix)
    {
        foreach (var clears in fix.Clears)
        {
            Require(clears.Works is >= 0 and <= 1 && clears.Holds is >= 0 and <= 1,
                $"option \"{fix.Id}\" clears root {clears.Root} state {clears.State} with chances {clears.Works} and {clears.Holds}; both must be from 0 to 1");
        }

        var worse = fix.Clears.FirstOrDefault(c => c.Leaves < 0 || c.Leaves == c.State);
        Require(worse is null, $"option \"{fix.Id}\" leaves root {worse?.Root} state {worse?.State} in state {worse?.Leaves}; it must leave 0 or another state");
        var twice = fix.Clears.GroupBy(c => (c.Root, c.State)).FirstOrDefault(g => g.Count() > 1)?.Key;
        Require(twice is null, $"option \"{fix.Id}\" names root {twice?.Root} state {twice?.State} twice; keep one");
    }

    private static void CheckRound(RoundOption round)
    {
        Require(round.Reveals.Length is >= 1 and <= 60, $"round \"{round.Id}\" reveals {round.Reveals.Length} findings; it must be 1 to 60");
        var twice = round.Reveals.GroupBy(f => f.Id).FirstOrDefault(g => g.Count() > 1)?.Key;
        Require(twice is null, $"round \"{round.Id}\" reveals \"{twice}\" twice; keep one");
        foreach (var finding in round.Reveals)
        {
            CheckFinding(round.Id, finding);
        }
    }

    private static void CheckFinding(string option, Finding finding)
    {
        var values = finding.Values.Length;
        Require(values >= 2, $"option \"{option}\" reveals \"{finding.Id}\", which has {values} values; it needs at least 2");
        var twice = finding.Links.GroupBy(l => (l.Root, l.State)).FirstOrDefault(g => g.Count() > 1)?.Key;
        Require(twice is null, $"finding \"{finding.Id}\" is linked to root {twice?.Root} state {twice?.State} twice; keep one");
        foreach (var shown in finding.Links.Select(l => l.Produces).Prepend(finding.Ambient))
        {
            Require(shown.Length == values && shown.All(p => p is >= 0 and <= 1) && Math.Abs(shown.Sum() - 1) < 1e-6,
                $"a distribution of finding \"{finding.Id}\" must have {values} probabilities that sum to 1; it has {shown.Length} that sum to {shown.Sum()}");
        }
    }

    private static void Require(bool holds, string wrong)
    {
        if (!holds)
        {
            throw Wrong(wrong);
        }
    }

    private static ArgumentException Wrong(string what) => new($"The repair problem cannot be planned: {what}.");
}
