using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Inference;

/// <summary>P(fault, evidence) by fault: there at the start, or still there after all actions.</summary>
internal static class JointMasses
{
    /// <summary>Null when the evidence is impossible. What is conditioned on cancels out between faults, and is left out.</summary>
    public static Dictionary<string, double>? Of(Network network, Evidence evidence, bool now)
    {
        var posterior = PosteriorInference.Of(network, evidence);
        if (posterior.Contradiction)
        {
            return null;
        }

        var log = posterior.LogEvidenceAsConditioned + (network.SomethingIsWrong ? Math.Log(posterior.PriorSomethingIsWrong) : 0);
        var faults = now ? FaultMarginals.Remaining(network, posterior) : FaultMarginals.AtStart(network, posterior);
        return faults.ToDictionary(f => f.Key, f => f.Value.Probability * Math.Exp(log));
    }
}
