using System.Collections.Immutable;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;
using Triage.Reasoning.Planning;

namespace Triage.Reasoning.Tests.Planning;

/// <summary>Small problems with everything in them: double faults, three values, lids behind lids, order of work, partial success.</summary>
internal static class RandomProblem
{
    private const int Faults = 4;

    public static RepairProblem From(int seed, int fixes = 3, int tests = 2)
    {
        var random = new Random(seed);
        return new RepairProblem
        {
            Belief = Belief(random),
            Options =
            [
                Bench.Stop(random.Next(10, 120)),
                .. Enumerable.Range(0, fixes).Select(n => Fix(random, n)),
                .. Enumerable.Range(0, tests).Select(n => Test(random, n)),
            ],
            Access = new AccessTree([new AccessStep("lid", random.Next(1, 20), null), new AccessStep("board", random.Next(1, 20), "lid")]),
            Rates = new Rates(60, 1),
        };
    }

    /// <summary>With a test and a round of three findings, that of the test among them or not, and now and then a second round that shares one.</summary>
    public static RepairProblem WithRounds(int seed)
    {
        var random = new Random(seed);
        var problem = From(seed, fixes: 3, tests: 1);
        var finding = ((TestOption)problem.Options[^1]).Reveals;
        var round = new RoundOption("round", new Expense(random.Next(1, 12)), [.. Enumerable.Range(1, 3).Select(n => random.Next(3) == 0 && n == 1 ? finding : Shown(random, n))]) { Access = Place(random) };
        return problem with { Options = [.. problem.Options, round, .. Second(random, round, finding)] };
    }

    private static IEnumerable<Option> Second(Random random, RoundOption first, Finding finding) =>
        random.Next(4) == 0 ? [new RoundOption("second round", new Expense(random.Next(1, 12)), [first.Reveals[2], finding])] : [];

    private static ImmutableArray<Hypothesis> Belief(Random random)
    {
        var sets = Enumerable.Range(0, Faults).Select(n => new[] { n }).Append([0, 1]).Append([1, 2, 3]).ToList();
        var weights = sets.Select(s => random.NextDouble() / s.Length).ToList();
        return [.. sets.Select((s, i) => Bench.Faults(weights[i] / weights.Sum(), s))];
    }

    private static Option Fix(Random random, int number)
    {
        var clears = Enumerable.Range(0, Faults).Where(_ => random.Next(2) == 0).Select(f => (f, random.Next(3) == 0 ? random.NextDouble() : 1)).ToArray();
        return Bench.Fix($"fix {number}", random.Next(1, 40), clears) with { Access = Place(random), After = number == 2 && random.Next(2) == 0 ? ["test 0"] : [] };
    }

    private static Option Test(Random random, int number)
    {
        var finding = Shown(random, number);
        return new TestOption($"test {number}", new Expense(random.Next(0, 8)), finding) { Access = Place(random) };
    }

    private static Finding Shown(Random random, int number)
    {
        var values = random.Next(2, 4);
        var links = Enumerable.Range(0, Faults).Where(_ => random.Next(3) > 0).Select(f => new Link(f, 1, Shares(random, values)));
        return new Finding($"finding {number}", [.. Enumerable.Range(0, values).Select(v => $"value {v}")], Shares(random, values), [.. links])
        {
            Nominal = random.Next(2) == 0,
        };
    }

    private static string? Place(Random random) => random.Next(3) switch { 0 => null, 1 => "lid", _ => "board" };

    private static ImmutableArray<double> Shares(Random random, int values)
    {
        var weights = Enumerable.Range(0, values).Select(_ => Math.Pow(random.NextDouble(), 3)).ToList();
        return [.. weights.Select(w => w / weights.Sum())];
    }
}
