using System.Collections.Immutable;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Inference;

/// <summary>The pieces that evidence is made of.</summary>
internal static class EvidenceItems
{
    /// <summary>Every piece that says something, in order: observations, likelihoods, outcomes, what held, something is wrong.</summary>
    public static ImmutableArray<EvidenceItem> Of(Network network, Evidence evidence)
    {
        var actions = Enumerable.Range(0, evidence.Actions.Length);
        return
        [
            .. Enumerable.Range(0, evidence.Observations.Length).Select(i => new EvidenceItem(EvidenceKind.Observation, i)),
            .. Enumerable.Range(0, evidence.Likelihoods.Length).Select(i => new EvidenceItem(EvidenceKind.Likelihood, i)),
            .. actions.Where(k => evidence.Actions[k].Outcome != ActionOutcome.NotSeen).Select(k => new EvidenceItem(EvidenceKind.Outcome, k)),
            .. actions.Where(k => evidence.Actions[k].Held is not null).Select(k => new EvidenceItem(EvidenceKind.Held, k)),
            .. network.SomethingIsWrong ? [new EvidenceItem(EvidenceKind.SomethingIsWrong, 0)] : Array.Empty<EvidenceItem>(),
        ];
    }
}
