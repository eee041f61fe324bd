using System.Collections.Immutable;
using Triage.Reasoning.Networks;

namespace Triage.Benchmarks;

/// <summary>
/// A network and what was seen of one faulty unit, from a seed. Roots have 1 to 4 modes, the expected number of faults is 0.1,
/// findings have 3 to 30 links to random modes that show with chance 0.05 … 0.95 and a leak of 0.001 … 0.05.
/// </summary>
public sealed record Case(Network Network, Evidence Evidence)
{
    /// <summary>The size that the product must answer at once.</summary>
    public static Case Large(int seed) => Of(seed, roots: 500, findings: 300, links: 30, abnormal: 12, normal: 40);

    /// <summary>Few roots that explain much between them.</summary>
    public static Case Linked(int seed, bool simulated = true) => Of(seed, roots: 20, findings: 300, links: 10, abnormal: 40, normal: 0, simulated: simulated);

    /// <summary>Nineteen single faults that all have a say in 35 nominal findings: no product form, everything by hypothesis.</summary>
    public static Case Shared(int seed)
    {
        var random = new Random(seed);
        const int Roots = 19;
        ImmutableArray<Root> roots = [.. Enumerable.Range(0, Roots).Select(r => new Root($"part {r}", [new("good", []), new("bad", [$"part {r}"])], [1 - 0.1 / Roots, 0.1 / Roots]))];
        ImmutableArray<Finding> findings =
        [
            .. Enumerable.Range(0, 35).Select(f => new Finding($"finding {f}", ["a", "b", "c"], Chances(random), [.. Enumerable.Range(0, Roots).Select(r => new Link(r, 1, Chances(random)))]) { Nominal = true }),
        ];
        return new(new(roots, findings), new Evidence { Observations = [.. findings.Select((f, i) => new Observation(i, Drawn(random, f.Links[0].Produces)))] });

        static ImmutableArray<double> Chances(Random random)
        {
            double[] raw = [.. Enumerable.Range(0, 3).Select(_ => -Math.Log(1 - random.NextDouble()))];
            return [.. raw.Select(x => x / raw.Sum())];
        }

        static int Drawn(Random random, ImmutableArray<double> chances) => random.NextDouble() is var u && u < chances[0] ? 0 : u < chances[0] + chances[1] ? 1 : 2;
    }

    /// <summary>The same, but two parts are measured good that alone can show something seen: three pieces that cannot stand together.</summary>
    public static Case Contradictory(int seed)
    {
        var (network, evidence) = Large(seed);
        var shown = new Finding("only two parts", ["normal", "abnormal"], [1, 0], [new Link(0, 1, [0.5, 0.5]), new Link(1, 1, [0.5, 0.5])]);
        return new(network with { Findings = network.Findings.Add(shown) }, evidence with
        {
            Observations = evidence.Observations.Add(new(network.Findings.Length, 1)),
            Likelihoods = [.. new[] { 0, 1 }.Select(r => new RootLikelihood(r, [1, .. new double[network.Roots[r].Prior.Length - 1]]))],
        });
    }

    /// <param name="seed">The same seed gives the same case.</param>
    /// <param name="roots">Parts.</param>
    /// <param name="findings">Things to look at.</param>
    /// <param name="links">Most links of one finding; the least are 3.</param>
    /// <param name="abnormal">Findings seen abnormal.</param>
    /// <param name="normal">Findings seen normal.</param>
    /// <param name="simulated">Prefer what two to four faults really show; otherwise any.</param>
    public static Case Of(int seed, int roots, int findings, int links, int abnormal, int normal, bool simulated = true)
    {
        var random = new Random(seed);
        var parts = Enumerable.Range(0, roots).Select(r => Part(random, r, 0.1 / roots)).ToImmutableArray();
        (int Root, int State)[] modes = [.. parts.SelectMany((p, r) => Enumerable.Range(1, p.States.Length - 1).Select(s => (r, s)))];
        var looks = Enumerable.Range(0, findings).Select(f => Look(random, f, modes, links)).ToImmutableArray();
        var faults = random.GetItems(modes, random.Next(2, 5)).DistinctBy(f => f.Root).ToHashSet();
        var order = Enumerable.Range(0, findings).ToArray();
        random.Shuffle(order);
        var shows = order.Where(f => simulated && random.NextDouble() > looks[f].Links.Where(l => faults.Contains((l.Root, l.State))).Aggregate(1.0, (q, l) => q * l.Produces[0])).ToHashSet();
        var seen = order.OrderBy(f => shows.Contains(f) ? 0 : 1).Take(abnormal).ToArray();
        var quiet = order.Except(seen).OrderBy(f => shows.Contains(f) ? 1 : 0).Take(normal);
        return new(
            new Network(parts, looks),
            new Evidence { Observations = [.. seen.Select(f => new Observation(f, 1)), .. quiet.Select(f => new Observation(f, 0))] });
    }

    private static Root Part(Random random, int number, double faulty)
    {
        var modes = random.Next(1, 5);
        var shares = Enumerable.Range(0, modes).Select(_ => 0.1 + random.NextDouble()).ToArray();
        var all = faulty * 2 * random.NextDouble();
        return new Root(
            $"part {number}",
            [new("good", []), .. Enumerable.Range(1, modes).Select(m => new RootState($"mode {m}", [$"part {number} mode {m}"]))],
            [1 - all, .. shares.Select(s => all * s / shares.Sum())])
        {
            PriorWeight = [.. Enumerable.Repeat(20.0, modes + 1)],
        };
    }

    private static Finding Look(Random random, int number, (int Root, int State)[] modes, int most)
    {
        var leak = 0.001 * Math.Pow(50, random.NextDouble());
        var linked = modes.ToArray();
        random.Shuffle(linked);
        return new Finding($"finding {number}", ["normal", "abnormal"], [1 - leak, leak], [.. linked.Take(random.Next(3, most + 1)).Select(Shows)]) { AmbientWeight = 50 };

        Link Shows((int Root, int State) mode)
        {
            var chance = 0.05 + 0.9 * random.NextDouble();
            return new Link(mode.Root, mode.State, [1 - chance, chance]) { Weight = 10 };
        }
    }
}
