using System.Collections.Immutable;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;
using Triage.Reasoning.Planning;

namespace Triage.Reasoning.Tests.Planning;

/// <summary>
/// Twelve faults and fifteen actions: eight fixes that cover one to three faults and fail sometimes, seven tests that are wrong
/// sometimes, lids, double faults of 10 % in all, one fault that no fix touches.
/// </summary>
internal static class TwelveFaults
{
    private const int Faults = 12, Fixes = 8, Tests = 7, Doubles = 3;

    public static RepairProblem From(int seed)
    {
        var random = new Random(seed);
        return Bench.Problem(
            Belief(random),
            [Bench.Stop(Math.Round(80 + 170 * random.NextDouble())), .. Enumerable.Range(0, Fixes).Select(n => Fix(random, n)), .. Enumerable.Range(0, Tests).Select(n => Test(random, n))])
            with { Access = new([new("lid", 4, null), new("shield", 6, "lid"), new("foot", 5, null)]) };
    }

    private static ImmutableArray<Hypothesis> Belief(Random random)
    {
        double[] single = [.. Enumerable.Range(0, Faults).Select(_ => 0.05 + Math.Pow(random.NextDouble(), 2))];
        double[] both = [.. Enumerable.Range(0, Doubles).Select(_ => 0.2 + random.NextDouble())];
        return
        [
            .. single.Select((p, n) => Bench.Faults(0.9 * p / single.Sum(), n)),
            .. both.Select(p => Pair(random, 0.1 * p / both.Sum())),
        ];
    }

    private static Hypothesis Pair(Random random, double probability)
    {
        var first = random.Next(Faults - 1);
        return Bench.Faults(probability, first, random.Next(first + 1, Faults));
    }

    private static Option Fix(Random random, int n) =>
        Bench.Fix($"fix {n}", Math.Round(5 + 40 * random.NextDouble()), [.. Covered(random, n).Select(f => (f, Math.Round(0.7 + 0.3 * random.NextDouble(), 2)))])
            with { Access = Behind(random) };

    /// <summary>The last fault is beyond every fix.</summary>
    private static IEnumerable<int> Covered(Random random, int n) =>
        Enumerable.Range(0, random.Next(1, 4)).Select(i => i == 0 ? n : random.Next(Faults - 1)).Distinct();

    private static Option Test(Random random, int n) =>
        Test($"test {n}", Math.Round(2 + 12 * random.NextDouble()), random) with { Access = Behind(random) };

    private static TestOption Test(string id, double price, Random random) => new(
        id, new Expense(0, price),
        new Finding(id, ["no", "yes"], [0.95, 0.05], [.. Enumerable.Range(0, Faults).Where(_ => random.Next(3) == 0).Select(f => Shows(f, 0.5 + 0.45 * random.NextDouble()))]));

    private static Link Shows(int fault, double chance) => new(fault, 1, [1 - chance, chance]);

    private static string? Behind(Random random) => random.Next(6) switch { 0 => "lid", 1 => "shield", 2 => "foot", _ => null };
}
