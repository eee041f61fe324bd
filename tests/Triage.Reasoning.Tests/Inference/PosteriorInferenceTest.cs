using System.Collections.Immutable;
using FsCheck.Xunit;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;
using Xunit;

namespace Triage.Reasoning.Tests.Inference;

[Trait("run", "long")]
public sealed class PosteriorInferenceTest
{
    [Property(MaxTest = 600, StartSize = 1000, EndSize = 1000000)]
    public void Equals_the_sum_over_every_state_and_fate(int seed)
    {
        var (network, evidence) = RandomCase.Of(seed);
        AssertSame(BruteForce.Of(network, evidence), PosteriorInference.Of(network, evidence), network);
    }

    [Property(MaxTest = 200, StartSize = 1000, EndSize = 1000000)]
    public void Equals_the_sum_over_every_state_and_fate_with_damage_that_follows(int seed)
    {
        var (network, evidence) = RandomCase.Compound(seed);
        var expected = BruteForce.Of(network, evidence);
        var posterior = PosteriorInference.Of(network, evidence);
        AssertSame(expected, posterior, network);
        foreach (var (fault, chance) in FaultMarginals.Remaining(network, posterior))
        {
            var sum = network.Roots.SelectMany((root, r) => root.States.Select((state, s) => state.Faults.Contains(fault) ? expected.Now[r][s] : 0)).Sum();
            Assert.Equal(sum / expected.Joint, chance.Probability, 1e-9);
        }
    }

    [Property(MaxTest = 200, StartSize = 1000, EndSize = 1000000)]
    public void Search_and_dynamic_programme_agree(int seed)
    {
        var (network, evidence) = RandomCase.Of(seed, nominal: false);
        var exact = PosteriorInference.Of(network, evidence);
        var (searched, withIdle) = Entangle(network, evidence);
        AssertClose(exact, PosteriorInference.Of(searched, withIdle));
    }

    [Property(MaxTest = 60, StartSize = 1000, EndSize = 1000000)]
    public void Search_bounds_hold_with_more_abnormal_findings_than_are_treated_exactly(int seed)
    {
        var random = new Random(seed);
        Root[] roots = [.. Enumerable.Range(0, 7).Select(r => Part($"r{r}", 0.05 + 0.2 * random.NextDouble()))];
        Finding[] findings =
        [
            .. Enumerable.Range(0, 13).Select(f => Two(
                $"f{f}", 0.1 * random.NextDouble(), [.. Enumerable.Range(0, 7).Where(_ => random.Next(2) == 0).Select(r => Shows(r, random.NextDouble()))])),
        ];
        var network = new Network([.. roots], [.. findings]);
        var evidence = new Evidence { Observations = [.. Enumerable.Range(0, 13).Select(f => new Observation(f, 1))] };
        var exact = PosteriorInference.Of(network, evidence);
        var (searched, withIdle) = Entangle(network, evidence);
        AssertClose(exact, PosteriorInference.Of(searched, withIdle));
        var few = Hypotheses.Of(searched, withIdle, most: 3);
        var all = BruteForce.Of(network, evidence);
        Assert.All(few.Listed, h =>
        {
            var probability = all.Hypotheses[string.Join(' ', h.Faulty.Select(f => $"{f.Root}:{f.State}"))] / all.Joint;
            Assert.InRange(probability, h.Probability - 1e-12, h.Probability / (1 - few.LeftOut) + 1e-12);
        });

        static Link Shows(int root, double chance) => new(root, 1, [1 - chance, chance]);
    }

    [Property(MaxTest = 40, StartSize = 1000, EndSize = 1000000)]
    public void What_is_left_out_is_bounded_where_thirty_abnormal_findings_meet(int seed)
    {
        var random = new Random(seed);
        Root[] roots = [.. Enumerable.Range(0, 8).Select(r => Part($"r{r}", Math.Pow(10, -1 - 4 * random.NextDouble())))];
        Finding[] findings =
        [
            .. Enumerable.Range(0, 30).Select(f => Two(
                $"f{f}",
                random.Next(4) == 0 ? 0 : 0.05 * random.NextDouble(),
                [.. Enumerable.Range(0, 8).Where(_ => random.Next(2) == 0).Append(f % 8).Distinct().Select(r => random.NextDouble()).Select((p, i) => new Link((f + i) % 8, 1, [1 - p, p]))])),
        ];
        var network = new Network([.. roots], [.. findings]);
        var evidence = new Evidence { Observations = [.. Enumerable.Range(0, 30).Select(f => new Observation(f, 1))] };
        var exact = BruteForce.Of(network, evidence);
        var posterior = PosteriorInference.Of(network, evidence);
        Assert.InRange(posterior.EvidenceProbability / exact.Evidence, 1 - posterior.LeftOut - 1e-9, 1 + 1e-9);
        for (var r = 0; r < roots.Length; r++)
        {
            var bounds = posterior.BoundsOf(r, 1);
            Assert.InRange(exact.AtStart[r][1] / exact.Joint, bounds.Lower - 1e-9, bounds.Upper + 1e-9);
        }

        // a bound that says nothing would hold too
        Assert.InRange(posterior.LeftOut, 0, 1e-8);
    }

    [Property(MaxTest = 100, StartSize = 1000, EndSize = 1000000)]
    public void Nothing_known_leaves_the_prior(int seed)
    {
        var network = RandomCase.Of(seed).Network with { SomethingIsWrong = false };
        var posterior = PosteriorInference.Of(network, Evidence.None);
        Assert.Equal(0, posterior.LogEvidence, 1e-14);
        for (var r = 0; r < network.Roots.Length; r++)
        {
            AssertClose(network.Roots[r].Prior, posterior.Marginals[r], 1e-15);
        }
    }

    [Property(MaxTest = 100, StartSize = 1000, EndSize = 1000000)]
    public void Expected_posterior_over_the_values_of_a_finding_is_the_prior(int seed)
    {
        var (network, evidence) = RandomCase.Of(seed);
        var before = PosteriorInference.Of(network, evidence);
        if (before.Contradiction)
        {
            return;
        }

        var expected = network.Roots.Select(r => new double[r.States.Length]).ToArray();
        var total = 0.0;
        for (var value = 0; value < network.Findings[0].Values.Length; value++)
        {
            var look = new Observation(0, value, evidence.Actions.Length) { WatchedMinutes = 1000 };
            var after = PosteriorInference.Of(network, evidence with { Observations = evidence.Observations.Add(look) });
            var chance = after.Contradiction ? 0 : Math.Exp(after.LogEvidenceAsConditioned - before.LogEvidenceAsConditioned);
            total += chance;
            for (var r = 0; r < expected.Length && chance > 0; r++)
            {
                for (var s = 0; s < expected[r].Length; s++)
                {
                    expected[r][s] += chance * after.Marginals[r][s];
                }
            }
        }

        Assert.Equal(1, total, 1e-9);
        for (var r = 0; r < expected.Length; r++)
        {
            AssertClose(before.Marginals[r], expected[r], 1e-9);
        }
    }

    [Fact]
    public void Billionth_priors_and_forty_normal_findings_do_not_underflow()
    {
        // by hand: the one cause of f has a prior of 1e-9 and shows nothing of 40 things it nearly always shows
        Finding[] normal = [.. Enumerable.Range(0, 40).Select(i => Two($"n{i}", 0.5, new Link(0, 1, [1e-6, 1 - 1e-6])))];
        var network = new Network(
            [Part("a", 1e-9), Part("b", 1e-9)], [Two("f", 0, new Link(0, 1, [0, 1])), .. normal]);
        var evidence = new Evidence { Observations = [new(0, 1), .. Enumerable.Range(1, 40).Select(f => new Observation(f, 0))] };
        var posterior = PosteriorInference.Of(network, evidence);
        Assert.Equal(1, posterior.Marginals[0][1], 1e-15);
        Assert.Equal(1e-9, posterior.Marginals[1][1], 1e-20);
        Assert.Equal(Math.Log(1e-9) + 40 * Math.Log(0.5e-6), posterior.LogEvidence, 1e-9);
    }

    [Fact]
    public void What_is_less_likely_than_any_double_has_its_posterior_all_the_same()
    {
        // by hand: only a explains f, though it nearly always shows 40 things that were not seen; P = 1e-9 · (0.5e-9)^40 is below 1e-380
        Finding[] normal = [.. Enumerable.Range(0, 40).Select(i => Two($"n{i}", 0.5, new Link(0, 1, [1e-9, 1 - 1e-9])))];
        var network = new Network([Part("a", 1e-9), Part("b", 0.25)], [Two("f", 0, new Link(0, 1, [0, 1])), .. normal]);
        var evidence = new Evidence { Observations = [new(0, 1), .. Enumerable.Range(1, 40).Select(f => new Observation(f, 0))] };
        var posterior = PosteriorInference.Of(network, evidence);
        Assert.Equal(Math.Log(1e-9) + 40 * Math.Log(0.5e-9), posterior.LogEvidence, 1e-9);
        Assert.Equal(1, posterior.Marginals[0][1], 1e-15);
        Assert.Equal(0.25, posterior.Marginals[1][1], 1e-15);
        Assert.Equal(new FaultyRoot(0, 1), Assert.Single(Hypotheses.Of(network, evidence).Listed[0].Faulty));
    }

    [Property(MaxTest = 60, StartSize = 1000, EndSize = 1000000)]
    public void What_is_all_but_impossible_in_one_part_changes_nothing_in_the_others(int seed)
    {
        // a part of its own with evidence below 1e-380 is independent of the rest, and is what is wrong
        var (network, evidence) = RandomCase.Of(seed, nominal: false, actions: false);
        var (part, first) = (network.Roots.Length, network.Findings.Length);
        Finding[] normal = [.. Enumerable.Range(0, 40).Select(i => Two($"n{i}", 0.5, new Link(part, 1, [1e-9, 1 - 1e-9])))];
        var together = new Network(
            network.Roots.Add(Part("part", 1e-9)),
            [.. network.Findings, Two("f", 0, new Link(part, 1, [0, 1])), .. normal]);
        Observation[] seen = [new(first, 1), .. Enumerable.Range(first + 1, 40).Select(f => new Observation(f, 0))];
        var actual = PosteriorInference.Of(together, evidence with { Observations = [.. evidence.Observations, .. seen] });
        var expected = BruteForce.Of(network with { SomethingIsWrong = false }, evidence);
        Assert.Equal(expected.Joint == 0, actual.Contradiction);
        if (actual.Contradiction)
        {
            return;
        }

        Assert.Equal(Math.Log(expected.Joint) + Math.Log(1e-9) + 40 * Math.Log(0.5e-9), actual.LogEvidence, 1e-8);
        for (var r = 0; r < network.Roots.Length; r++)
        {
            AssertClose(expected.AtStart[r].Select(p => p / expected.Joint), actual.Marginals[r], 1e-9);
        }
    }

    [Fact]
    public void Works_until_power_is_lost_accuses_only_what_the_action_silences()
    {
        var network = new Network([Part("battery", 0.02), Part("chip", 0.02)], []);
        var reset = new ActionTaken("reset", [new Clearing(0, 1, 0.9, 0.1), new Clearing(1, 1, 0.05)], ActionOutcome.Works);
        var works = PosteriorInference.Of(network, new Evidence { Actions = [reset] });
        var gone = PosteriorInference.Of(network, new Evidence { Actions = [reset with { Held = false }] });
        Assert.True(works.Marginals[0][1] > 0.9);
        Assert.True(gone.Marginals[0][1] > works.Marginals[0][1]);
        Assert.Equal(1, gone.Remaining[0][1], 1e-12);
        Assert.Equal(gone.Marginals[1][1] * 0, gone.Remaining[1][1]);
    }

    [Fact]
    public void A_failed_reset_is_no_evidence_against_what_it_never_touches()
    {
        var network = new Network([Part("battery", 0.02), Part("chip", 0.02), Part("lamp", 0.01)], []);
        var failed = new ActionTaken("reset", [new Clearing(0, 1, 0.9)], ActionOutcome.StillFaulty);
        var before = PosteriorInference.Of(network, Evidence.None);
        var after = PosteriorInference.Of(network, new Evidence { Actions = [failed] });
        Assert.True(after.Marginals[0][1] < before.Marginals[0][1]);
        Assert.Equal(before.Marginals[1][1] / before.Marginals[2][1], after.Marginals[1][1] / after.Marginals[2][1], 1e-12);
        var again = PosteriorInference.Of(network, new Evidence { Actions = [failed, failed] });
        AssertClose(after.Marginals[0], again.Marginals[0], 1e-15);
    }

    [Fact]
    public void Contradicting_looks_are_named_and_nothing_else()
    {
        var network = new Network([Part("a", 0.1)], [Two("f", 0, new Link(0, 1, [0, 1])), Two("g", 0, new Link(0, 1, [0, 1])), Two("h", 0.5)]);
        var posterior = PosteriorInference.Of(network, new Evidence { Observations = [new(2, 1), new(0, 1), new(1, 0)] });
        Assert.True(posterior.Contradiction);
        Assert.Equal([new(EvidenceKind.Observation, 1), new(EvidenceKind.Observation, 2)], posterior.Conflict.Order(Comparer<EvidenceItem>.Create((x, y) => x.Index - y.Index)));
    }

    [Fact]
    public void Bad_input_is_refused_by_name()
    {
        var network = new Network([Part("a", 0.1)], [Two("f", 0.1)]);
        var error = Assert.Throws<ArgumentException>(() => PosteriorInference.Of(network, new Evidence { Observations = [new(0, 2)] }));
        Assert.Equal("Observation 0: finding 'f' has no value 2.", error.Message);
        var root = network.Roots[0] with { Prior = [0.5, 0.6] };
        error = Assert.Throws<ArgumentException>(() => PosteriorInference.Of(network with { Roots = [root] }, Evidence.None));
        Assert.Equal("Root 'a': priors must lie in 0 … 1 and sum to 1.", error.Message);
    }

    internal static Root Part(string id, double prior) =>
        new(id, [new("good", []), new("failed", [id])], [1 - prior, prior]);

    internal static Finding Two(string id, double leak, params Link[] links) =>
        new(id, ["absent", "present"], [1 - leak, leak], [.. links]);

    /// <summary>The same posterior, but with a nominal finding that everything shares and that says nothing.</summary>
    internal static (Network Network, Evidence Evidence) Entangle(Network network, Evidence evidence)
    {
        Root idle = new("idle", [new("good", []), new("odd", ["odd"])], [1, 0]);
        ImmutableArray<double> even = [0.5, 0.5];
        var faults = network.Roots.SelectMany((root, r) => Enumerable.Range(1, root.States.Length - 1).Select(s => new Link(r, s, even)));
        var shared = new Finding("shared", ["a", "b"], even, [.. faults, new Link(network.Roots.Length, 1, even)]) { Nominal = true };
        return (
            network with { Roots = network.Roots.Add(idle), Findings = network.Findings.Add(shared) },
            evidence with { Observations = evidence.Observations.Add(new(network.Findings.Length, 0)) });
    }

    private static void AssertClose(Posterior exact, Posterior searched)
    {
        Assert.Equal(exact.Contradiction, searched.Contradiction);
        Assert.InRange(searched.LeftOut, 0, 1e-9);
        for (var r = 0; r < exact.Marginals.Length; r++)
        {
            AssertClose(exact.Marginals[r], searched.Marginals[r], 2e-9);
            AssertClose(exact.Remaining[r], searched.Remaining[r], 2e-9);
        }
    }

    private static void AssertSame(BruteForce expected, Posterior actual, Network network)
    {
        Assert.Equal(expected.Joint == 0, actual.Contradiction);
        Assert.Equal(expected.SomethingIsWrong, actual.PriorSomethingIsWrong, 1e-12);
        Assert.Equal(1, (expected.Evidence + 1e-300) / (actual.EvidenceProbability + 1e-300), 1e-9);
        if (actual.Contradiction)
        {
            return;
        }

        var conditioned = network.SomethingIsWrong ? expected.Joint / expected.SomethingIsWrong : expected.Joint;
        Assert.Equal(1, conditioned / Math.Exp(actual.LogEvidenceAsConditioned), 1e-9);
        for (var r = 0; r < network.Roots.Length; r++)
        {
            AssertClose(expected.AtStart[r].Select(p => p / expected.Joint), actual.Marginals[r], 2e-9);
            AssertClose(expected.Now[r].Select(p => p / expected.Joint), actual.Remaining[r], 2e-9);
        }
    }

    private static void AssertClose(IEnumerable<double> expected, IEnumerable<double> actual, double tolerance)
    {
        foreach (var (e, a) in expected.Zip(actual))
        {
            Assert.Equal(e, a, tolerance);
        }
    }
}
