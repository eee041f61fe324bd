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
        var values = random.Next(2, 4);
        var links = Enumerable.Range(0, Faults).Where(_ => random.Next(3) > 0).Select(f => new Link(f, 1, Shares(random, values)));
        var finding = new Finding($"finding {number}", [.. Enumerable.Range(0, values).Select(v => $"value {v}")], Shares(random, values), [.. links])
        {
            Nominal = random.Next(2) == 0,
        };
        return new TestOption($"test {number}", new Expense(random.Next(0, 8)), finding) { Access = Place(random) };
    }

    private static string? Place(Random random) => random.Next(3) switch { 0 => null, 1 => "lid", _ => "board" };

    private static ImmutableArray<double> Shares(Random random, int values)
    {
        var weights = Enumerable.Range(0, values).Select(_ => Math.Pow(random.NextDouble(), 3)).ToList();
        return [.. weights.Select(w => w / weights.Sum())];
    }
}
