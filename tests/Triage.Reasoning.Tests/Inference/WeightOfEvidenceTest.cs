using FsCheck.Xunit;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;
using Xunit;

namespace Triage.Reasoning.Tests.Inference;

public sealed class WeightOfEvidenceTest
{
    [Fact]
    public void One_finding_weighs_its_likelihood_ratio()
    {
        // screening: 80 % sensitivity, 9.6 % false positives (Eddy 1982; Gigerenzer & Hoffrage 1995), 10 log10(0.8 / 0.096)
        var network = new Network(
            [PosteriorInferenceTest.Part("ill", 0.01)],
            [new Finding("test", ["no", "yes"], [0.904, 0.096], [new Link(0, 1, [0.2, 0.8])]) { Nominal = true }])
        {
            SomethingIsWrong = false,
        };
        var weight = Assert.Single(WeightOfEvidence.Of(network, new Evidence { Observations = [new(0, 1)] }));
        Assert.Equal(10 * Math.Log10(0.8 / 0.096), weight.States[0][1], 1e-12);
        Assert.Equal(weight.States[0][1], weight.Faults["ill"], 1e-12);
        Assert.Equal(-weight.States[0][0], weight.States[0][1], 1e-12);
    }

    /// <summary>By the definition of Good 1950: two posteriors, with the observation and without it.</summary>
    [Property(MaxTest = 150, StartSize = 1000, EndSize = 1000000)]
    public void Every_observation_weighs_the_odds_with_it_over_the_odds_without_it(int seed)
    {
        var (network, evidence) = RandomCase.Compound(seed);
        if (BruteForce.Of(network, evidence).Joint == 0)
        {
            return;
        }

        var with = FaultMarginals.AtStart(network, PosteriorInference.Of(network, evidence));
        foreach (var weight in WeightOfEvidence.Of(network, evidence).Where(w => w.Item.Kind == EvidenceKind.Observation))
        {
            var without = FaultMarginals.AtStart(network, PosteriorInference.Of(network, evidence with { Observations = evidence.Observations.RemoveAt(weight.Item.Index) }));
            Assert.Equal(with.Count, weight.Faults.Count);
            Assert.All(with, f => Assert.Equal(10 * (Math.Log10(f.Value.Odds) - Math.Log10(without[f.Key].Odds)), weight.Faults[f.Key], 1e-9));
        }
    }

    [Fact]
    public void What_another_cause_explains_speaks_against_this_one()
    {
        var network = new Network(
            [PosteriorInferenceTest.Part("a", 0.05), PosteriorInferenceTest.Part("b", 0.05)],
            [
                PosteriorInferenceTest.Two("both", 0.01, new Link(0, 1, [0.1, 0.9]), new Link(1, 1, [0.1, 0.9])),
                PosteriorInferenceTest.Two("only b", 0.01, new Link(1, 1, [0.1, 0.9])),
            ]);
        var weights = WeightOfEvidence.Of(network, new Evidence { Observations = [new(0, 1), new(1, 1)] });
        var onlyB = weights.Single(w => w.Item == new EvidenceItem(EvidenceKind.Observation, 1));
        Assert.True(onlyB.Faults["a"] < -3 && onlyB.Faults["b"] > 3);
    }
}
