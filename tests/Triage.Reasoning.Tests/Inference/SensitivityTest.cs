using System.Collections.Immutable;
using FsCheck.Xunit;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;
using Xunit;

namespace Triage.Reasoning.Tests.Inference;

public sealed class SensitivityTest
{
    [Property(MaxTest = 150, StartSize = 1000, EndSize = 1000000)]
    public void At_the_value_named_the_two_faults_are_equally_likely(int seed)
    {
        var (exact, evidence) = RandomCase.Of(seed, nominal: false);
        var network = Weigh(exact, 5);
        if (BruteForce.Of(network, evidence).Joint == 0)
        {
            return;
        }

        foreach (var swing in Sensitivity.Of(network, evidence))
        {
            Assert.InRange(swing.At, swing.Interval.Lower, swing.Interval.Upper);
            var moved = Move(network, swing);
            var there = FaultMarginals.AtStart(moved, PosteriorInference.Of(moved, evidence));
            Assert.Equal(1, there[swing.Instead].Probability / there[swing.First].Probability, 1e-6);
        }
    }

    [Fact]
    public void A_prior_changes_places_where_the_odds_say()
    {
        // by hand: without a common cause P(a) : P(b) = π_a · 0.8 · (1 − π_b) : π_b · 0.4 · (1 − π_a) near enough; equal at π_b ≈ 2 π_a
        var network = Weigh(
            new Network(
                [PosteriorInferenceTest.Part("a", 0.01), PosteriorInferenceTest.Part("b", 0.015)],
                [PosteriorInferenceTest.Two("f", 0, new Link(0, 1, [0.2, 0.8]), new Link(1, 1, [0.6, 0.4]))]),
            400);
        var swings = Sensitivity.Of(network, new Evidence { Observations = [new(0, 1)] });
        var prior = Assert.Single(swings, s => s.Kind == SwingKind.Prior && s.Root == 1);
        Assert.Equal(("a", "b"), (prior.First, prior.Instead));
        Assert.Equal(0.02, prior.At, 1e-3);
    }

    [Fact]
    public void A_link_changes_places_where_the_joint_masses_are_equal()
    {
        // by hand, no leak: what both show together counts for both; P(a, f) - P(b, f) = 0.02 · 0.97 · θ - 0.03 · 0.98 · 0.4, zero at θ = 0.01176 / 0.0194
        var network = Weigh(
            new Network(
                [PosteriorInferenceTest.Part("a", 0.02), PosteriorInferenceTest.Part("b", 0.03)],
                [PosteriorInferenceTest.Two("f", 0, new Link(0, 1, [0.2, 0.8]), new Link(1, 1, [0.6, 0.4]))]),
            10);
        var swings = Sensitivity.Of(network, new Evidence { Observations = [new(0, 1)] });
        var link = Assert.Single(swings, s => s.Kind == SwingKind.Link && s.Root == 0);
        Assert.Equal(("a", "b"), (link.First, link.Instead));
        Assert.Equal(0.01176 / 0.0194, link.At, 1e-9);
    }

    [Fact]
    public void Of_what_is_still_there_the_chance_that_a_repair_missed_it_counts_too()
    {
        // by hand: a came in ahead, 0.03 to 0.02; a repair that clears it half of the time leaves 0.5 · 0.03, so that b leads until π_a = 2 · 0.02
        var network = Weigh(new Network([PosteriorInferenceTest.Part("a", 0.03), PosteriorInferenceTest.Part("b", 0.02)], []), 100);
        var evidence = new Evidence { Actions = [new("mend", [new Clearing(0, 1, 0.5)], ActionOutcome.NotSeen)] };
        Assert.All(Sensitivity.Of(network, evidence), s => Assert.Equal("a", s.First));
        var prior = Assert.Single(Sensitivity.Of(network, evidence, now: true), s => s.Kind == SwingKind.Prior && s.Root == 0);
        Assert.Equal(("b", "a"), (prior.First, prior.Instead));
        Assert.Equal(0.04, prior.At, 1e-9);
    }

    [Fact]
    public void What_is_exactly_known_changes_nothing()
    {
        var network = new Network([PosteriorInferenceTest.Part("a", 0.01), PosteriorInferenceTest.Part("b", 0.0099)], []);
        Assert.Empty(Sensitivity.Of(network, Evidence.None));
    }

    private static Network Weigh(Network network, double weight) => network with
    {
        Roots = [.. network.Roots.Select(r => r with { PriorWeight = [.. r.Prior.Select(_ => weight)] })],
        Findings =
        [
            .. network.Findings.Select(f => f with { AmbientWeight = weight, Links = [.. f.Links.Select(l => l with { Weight = weight })] }),
        ],
    };

    private static Network Move(Network network, Swing swing)
    {
        if (swing.Kind == SwingKind.Prior)
        {
            var root = network.Roots[swing.Root];
            return network with { Roots = network.Roots.SetItem(swing.Root, root with { Prior = Among(root.Prior, swing.State, root.Prior.Length - 1, swing.At) }) };
        }

        var finding = network.Findings[swing.Finding];
        var moved = swing.Kind == SwingKind.Ambient
            ? finding with { Ambient = Among(finding.Ambient, swing.Value, swing.Value, swing.At) }
            : finding with
            {
                Links =
                [
                    .. finding.Links.Select(l => (l.Root, l.State) == (swing.Root, swing.State)
                        ? l with { Produces = Among(l.Produces, swing.Value, swing.Value, swing.At) }
                        : l),
                ],
            };
        return network with { Findings = network.Findings.SetItem(swing.Finding, moved) };
    }

    /// <summary>One chance among those up to a last one is set; the others share the rest as they did.</summary>
    private static ImmutableArray<double> Among(ImmutableArray<double> chances, int index, int last, double chance)
    {
        var within = chances.Take(last + 1).Sum();
        var scale = within * (1 - chance) / (within - chances[index]);
        return [.. chances.Select((p, i) => i == index ? within * chance : i <= last ? p * scale : p)];
    }
}
