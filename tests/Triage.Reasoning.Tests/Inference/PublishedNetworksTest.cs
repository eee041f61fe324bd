using System.Text.Json.Nodes;
using Triage.Reasoning.Inference;
using Triage.Tools.SolveNetworks;
using Xunit;

namespace Triage.Reasoning.Tests.Inference;

/// <summary>Against exact rational arithmetic (data/bn2o.md): P(e) to 1e-11 relative, posteriors to 1e-12, contradictions exactly.</summary>
public sealed class PublishedNetworksTest
{
    private static readonly JsonArray Instances =
        JsonNode.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "data", "bn2o-open.json")))!["instances"]!.AsArray();

    public static TheoryData<int> All => [.. Enumerable.Range(0, Instances.Count)];

    [Theory]
    [MemberData(nameof(All))]
    public void Two_layer_network_has_its_exact_posterior(int index)
    {
        var expected = Instances[index]!["expected"]!;
        var instance = Instance.Read(Instances[index]!);
        var posterior = PosteriorInference.Of(instance.Network, instance.Seen);
        Assert.Equal((bool)expected["contradiction"]!, posterior.Contradiction);
        AssertRelative((double)expected["p_evidence"]!, posterior.EvidenceProbability);
        AssertRelative((double)expected["p_any_faulty"]!, posterior.PriorSomethingIsWrong);
        if (expected["p_evidence_given_any_faulty"] is { } conditioned)
        {
            AssertRelative((double)conditioned, Math.Exp(posterior.LogEvidenceAsConditioned));
        }

        if (posterior.Contradiction)
        {
            AssertConflicts(instance, posterior);
            return;
        }

        for (var r = 0; r < instance.Roots.Count; r++)
        {
            for (var s = 0; s < instance.Roots[r].States.Count; s++)
            {
                Assert.Equal((double)expected["posterior"]![instance.Roots[r].Id]![instance.Roots[r].States[s]]!, posterior.Marginals[r][s], 1e-12);
            }
        }
    }

    private static void AssertRelative(double expected, double actual) =>
        Assert.InRange(Math.Abs(actual - expected), 0, 1e-11 * expected);

    /// <summary>What is named cannot stand together, and whatever of it is left out, the rest can.</summary>
    private static void AssertConflicts(Instance instance, Posterior posterior)
    {
        Assert.Equal(0, Joint(item => posterior.Conflict.Contains(item)));
        Assert.All(posterior.Conflict, spared => Assert.True(Joint(item => item != spared && posterior.Conflict.Contains(item)) > 0));

        double Joint(Predicate<EvidenceItem> counts) =>
            BruteForce.Of(instance.Network, instance.Seen, (kind, i) => counts(new(kind, i))).Joint;
    }
}
