using System.Collections.Immutable;
using FsCheck.Xunit;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;
using Xunit;

namespace Triage.Reasoning.Tests.Networks;

public sealed class CompoundRootTest
{
    private static readonly CompoundPart Leak = new("battery", [new("good", []), new("leaks", ["leak"])], [0.9, 0.1]);

    private static readonly CompoundPart Trace =
        new("trace", [new("good", []), new("open", ["open"]), new("thin", ["thin"])], [0.97, 0.02, 0.01])
        {
            Follows = [new(0, 1, 1, 0.3), new(0, 1, 2, 0.2)],
        };

    [Fact]
    public void Damage_that_follows_is_noisy_or_over_the_parts_own_prior()
    {
        var compound = CompoundRoot.Compile("supply", [Leak, Trace]);
        var open = Enumerable.Range(0, compound.Combinations.Length)
            .Where(s => compound.Combinations[s].SequenceEqual([1, 1])).Select(s => compound.Root.Prior[s]).Single();
        Assert.Equal(0.1 * (0.02 + 0.97 * 0.3), open, 1e-15);
        Assert.Equal(0.9 * 0.97, compound.Root.Prior[0], 1e-15);
        Assert.Equal(1, compound.Root.Prior.Sum(), 1e-15);
        Assert.Equal(["leak", "open"], compound.Root.States.Single(s => s.Id == "battery leaks+trace open").Faults);
    }

    [Fact]
    public void Parts_that_do_not_hang_together_are_as_good_as_separate_roots()
    {
        // the product of C over the modes of a combination is what two roots would give
        var alone = Trace with { Follows = [] };
        var compound = CompoundRoot.Compile("both", [Leak, alone]);
        Link[] shows = [new(0, 1, [0.2, 0.3, 0.5]), new(1, 1, [0.1, 0.9, 0]), new(1, 2, [0.7, 0.1, 0.2])];
        ImmutableArray<double> ambient = [0.9, 0.06, 0.04];
        var apart = new Network(
            [new Root("battery", Leak.States, Leak.Own), new Root("trace", alone.States, alone.Own)],
            [new Finding("f", ["none", "dim", "dead"], ambient, [.. shows])]);
        var tied = new Network(
            [compound.Root],
            [new Finding("f", ["none", "dim", "dead"], ambient, [.. shows.SelectMany(l => compound.Links(l, 0))])]);
        for (var value = 0; value < 3; value++)
        {
            var evidence = new Evidence { Observations = [new(0, value)] };
            var expected = PosteriorInference.Of(apart, evidence);
            var actual = PosteriorInference.Of(tied, evidence);
            Assert.Equal(expected.LogEvidenceAsConditioned, actual.LogEvidenceAsConditioned, 1e-13);
            Assert.All(FaultMarginals.AtStart(apart, expected), f =>
                Assert.Equal(f.Value.Probability, FaultMarginals.AtStart(tied, actual)[f.Key].Probability, 1e-13));
        }
    }

    [Property(MaxTest = 200, StartSize = 1000, EndSize = 1000000)]
    public void Conditional_tables_and_damage_that_follows_are_the_sum_over_every_state_of_every_part(int seed)
    {
        var random = new Random(seed);
        var parts = ImmutableArray<CompoundPart>.Empty;
        for (var i = 0; i < 4; i++)
        {
            parts = parts.Add(RandomPart(random, i, parts));
        }

        var compound = CompoundRoot.Compile("board", parts);
        Link[] shows = [.. parts.SelectMany((p, i) => Enumerable.Range(1, p.States.Length - 1).Select(s => new Link(i, s, Chances(random, 3))))];
        var finding = new Finding("f", ["none", "dim", "dead"], Chances(random, 3), [.. shows.SelectMany(l => compound.Links(l, 0))]);
        var network = new Network([compound.Root], [finding]) { SomethingIsWrong = false };
        for (var value = 0; value < 3; value++)
        {
            var joint = Enumerate(parts, states => AtMost(states, value) - AtMost(states, value - 1)).ToArray();
            var posterior = PosteriorInference.Of(network, new Evidence { Observations = [new(0, value)] });
            var total = joint.Sum(j => j.Mass);
            Assert.Equal(total, posterior.EvidenceProbability, 1e-12);
            if (posterior.Contradiction || total < 1e-12)
            {
                continue;
            }

            foreach (var (fault, chance) in FaultMarginals.AtStart(network, posterior))
            {
                var expected = joint.Where(j => parts.Where((p, i) => p.States[j.States[i]].Faults.Contains(fault)).Any()).Sum(j => j.Mass);
                Assert.Equal(expected / total, chance.Probability, 1e-9);
            }
        }

        double AtMost(int[] states, int value) => shows.Where(l => states[l.Root] == l.State)
            .Aggregate(finding.Ambient.Take(value + 1).Sum(), (p, l) => p * l.Produces.Take(value + 1).Sum());
    }

    /// <summary>Every combination of states with its probability times a factor, from the definitions alone.</summary>
    private static IEnumerable<(int[] States, double Mass)> Enumerate(ImmutableArray<CompoundPart> parts, Func<int[], double> factor)
    {
        IEnumerable<(int[] States, double Mass)> all = [([], 1.0)];
        foreach (var part in parts)
        {
            all = all.SelectMany(a => Enumerable.Range(0, part.States.Length).Select(s => (new[] { a.States, [s] }.SelectMany(x => x).ToArray(), a.Mass * Chance(part, a.States, s))));
        }

        return all.Select(a => (a.States, a.Mass * factor(a.States)));

        double Chance(CompoundPart part, int[] earlier, int state)
        {
            if (part.Table is { } table)
            {
                return table.Rows[table.Parents.Aggregate(0, (row, p) => row * parts[p].States.Length + earlier[p])][state];
            }

            // good only where nothing of its own and no cause strikes; a mode by itself, or by the first cause that strikes a part still good
            var causes = part.Follows.Where(f => earlier[f.Part] == f.PartState).ToArray();
            var (chance, good) = (part.Own[state], part.Own[0]);
            foreach (var cause in causes.GroupBy(f => f.Part))
            {
                chance += state == 0 ? 0 : good * cause.Where(f => f.State == state).Sum(f => f.Chance);
                good *= 1 - cause.Sum(f => f.Chance);
            }

            return state == 0 ? good : chance;
        }
    }

    private static CompoundPart RandomPart(Random random, int number, ImmutableArray<CompoundPart> earlier)
    {
        var states = random.Next(2, 4);
        var part = new CompoundPart(
            $"p{number}",
            [.. Enumerable.Range(0, states).Select(s => new RootState(s == 0 ? "good" : $"m{s}", s == 0 ? [] : [$"p{number}/m{s}"]))],
            Chances(random, states));
        ImmutableArray<int> parents = [.. Enumerable.Range(0, number).Where(_ => random.Next(2) == 0)];
        var rows = parents.Aggregate(1, (n, p) => n * earlier[p].States.Length);
        return random.Next(2) == 0
            ? part with { Table = new(parents, [.. Enumerable.Range(0, rows).Select(_ => Chances(random, states))]) }
            : part with { Follows = [.. parents.Select(p => new LeadsTo(p, 1, 1, random.NextDouble()))] };
    }

    private static ImmutableArray<double> Chances(Random random, int count)
    {
        var raw = Enumerable.Range(0, count).Select(_ => random.Next(4) == 0 ? 0 : random.NextDouble()).ToArray();
        raw[random.Next(count)] += 0.01;
        return [.. raw.Select(x => x / raw.Sum())];
    }

    [Fact]
    public void Too_many_combinations_are_refused_with_the_part_that_was_too_much()
    {
        var parts = Enumerable.Range(0, 10).Select(i => Leak with { Id = $"p{i}" });
        var error = Assert.Throws<ArgumentException>(() => CompoundRoot.Compile("board", [.. parts]));
        Assert.Equal("Compound root 'board' has more than 512 combinations with part 'p9': tie fewer faults together.", error.Message);
    }

    [Fact]
    public void A_part_may_follow_earlier_ones_only()
    {
        var error = Assert.Throws<ArgumentException>(() => CompoundRoot.Compile("supply", [Trace, Leak]));
        Assert.Equal("Part 'trace': what leads to it must be a fault state of an earlier part.", error.Message);
    }
}
