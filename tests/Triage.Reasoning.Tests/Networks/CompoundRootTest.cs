using System.Collections.Immutable;
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
