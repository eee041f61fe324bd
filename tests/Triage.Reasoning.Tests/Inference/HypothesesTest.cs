using FsCheck.Xunit;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;
using Xunit;

namespace Triage.Reasoning.Tests.Inference;

public sealed class HypothesesTest
{
    [Property(MaxTest = 300, StartSize = 1000, EndSize = 1000000)]
    public void Listed_and_left_out_account_for_every_fault_that_remains(int seed)
    {
        var (network, evidence) = RandomCase.Of(seed);
        var expected = BruteForce.Of(network, evidence);
        if (expected.Joint == 0)
        {
            Assert.Throws<ArgumentException>(() => Hypotheses.Of(network, evidence));
            return;
        }

        var hypotheses = Hypotheses.Of(network, evidence, bound: 1e-12);
        Assert.Equal(1, hypotheses.Listed.Sum(h => h.Probability) + hypotheses.LeftOut, 1e-9);
        Assert.InRange(hypotheses.LeftOut, 0, 1e-11);
        Assert.Equal(hypotheses.Listed.OrderByDescending(h => h.Probability), hypotheses.Listed);
        foreach (var hypothesis in hypotheses.Listed)
        {
            // the rest are good or bystanders: the sum over all sets that contain these faults is at least as likely
            var within = expected.Hypotheses
                .Where(h => hypothesis.Faulty.All(f => h.Key.Split(' ').Contains($"{f.Root}:{f.State}")))
                .Sum(h => h.Value) / expected.Joint;
            Assert.InRange(hypothesis.Probability, 0, within + 1e-9);
        }
    }

    [Fact]
    public void Without_bystanders_each_hypothesis_has_the_probability_of_its_set()
    {
        var network = new Network(
            [PosteriorInferenceTest.Part("a", 0.1), PosteriorInferenceTest.Part("b", 0.2), PosteriorInferenceTest.Part("c", 0.05)],
            [PosteriorInferenceTest.Two("f", 0.01, new Link(0, 1, [0.2, 0.8]), new Link(1, 1, [0.6, 0.4]), new Link(2, 1, [0, 1]))]);
        var evidence = new Evidence { Observations = [new(0, 1)] };
        var expected = BruteForce.Of(network, evidence);
        var listed = Hypotheses.Of(network, evidence).Listed;
        Assert.Equal(7, listed.Length);
        Assert.All(listed, h => Assert.Equal(
            expected.Hypotheses[string.Join(' ', h.Faulty.Select(f => $"{f.Root}:{f.State}"))] / expected.Joint, h.Probability, 1e-14));
    }

    [Property(MaxTest = 200, StartSize = 1000, EndSize = 1000000)]
    public void What_a_short_list_leaves_out_is_bounded(int seed)
    {
        var (network, evidence) = RandomCase.Of(seed);
        if (BruteForce.Of(network, evidence).Joint == 0)
        {
            return;
        }

        var all = Hypotheses.Of(network, evidence, bound: 1e-12);
        var two = Hypotheses.Of(network, evidence, most: 2);
        Assert.InRange(two.Listed.Length, 1, 2);
        Assert.True(two.Listed.Sum(h => h.Probability) + two.LeftOut >= 1 - 1e-9);
        Assert.True(evidence.Actions.Length > 0 || Math.Abs(two.Listed[0].Probability - all.Listed[0].Probability) <= two.LeftOut);
    }

    [Fact]
    public void Without_evidence_each_part_alone_is_a_hypothesis()
    {
        var network = new Network([PosteriorInferenceTest.Part("a", 0.01), PosteriorInferenceTest.Part("b", 0.02)], []);
        var set = Hypotheses.Of(network, Evidence.None);
        Assert.Equal(0, set.LeftOut, 1e-15);
        Assert.Equal([1, 0], set.Listed.Select(h => h.Faulty.Single().Root));
        Assert.Equal(0.02 / (1 - 0.99 * 0.98), set.Listed[0].Probability, 1e-14);
    }
}
