using System.Text.Json.Nodes;
using Triage.Reasoning.Inference;

namespace Triage.Tools.SolveNetworks;

/// <summary>What the product makes of one instance, in the fields of "expected".</summary>
public static class Answer
{
    public static JsonObject Of(Instance instance)
    {
        var posterior = PosteriorInference.Of(instance.Network, instance.Seen);
        return new JsonObject
        {
            ["id"] = instance.Id,
            ["p_evidence"] = posterior.EvidenceProbability,
            ["p_any_faulty"] = posterior.PriorSomethingIsWrong,
            ["p_evidence_given_any_faulty"] = instance.ConditionAnyFaulty ? Math.Exp(posterior.LogEvidenceAsConditioned) : null,
            ["contradiction"] = posterior.Contradiction,
            ["posterior"] = posterior.Contradiction ? null : Rows(instance, posterior),
        };
    }

    private static JsonObject Rows(Instance instance, Posterior posterior) => new(instance.Roots.Select((root, r) =>
        KeyValuePair.Create<string, JsonNode?>(root.Id, new JsonObject(root.States.Select((state, s) =>
            KeyValuePair.Create<string, JsonNode?>(state, JsonValue.Create(posterior.Marginals[r][s])))))));
}
