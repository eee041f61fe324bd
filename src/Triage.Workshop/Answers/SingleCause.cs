using System.Collections.Immutable;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;
using Triage.Workshop.Translating;

namespace Triage.Workshop.Answers;

/// <summary>Which listed fault it is when exactly one is there and nothing else is wrong.</summary>
internal static class SingleCause
{
    /// <summary>By fault id, summing to 1; empty when no single fault can have given the evidence.</summary>
    public static ImmutableDictionary<string, double> Of(DeviceNetwork network, Evidence evidence)
    {
        var candidates = network.Faults
            .Where(f => f.Key is not (SpecialFaults.Unlisted or SpecialFaults.NothingWrong))
            .OrderBy(f => f.Key, StringComparer.Ordinal)
            .SelectMany(f => f.Value.Where(p => network.FaultsIn(p.Root, p.State).Count() == 1).Take(1).Select(p => (Fault: f.Key, Place: new FaultyRoot(p.Root, p.State))))
            .ToList();
        return ExactlyOne.Of(network.Network, evidence, [.. candidates.Select(c => c.Place)])
            .Select((p, i) => KeyValuePair.Create(candidates[i].Fault, p))
            .ToImmutableDictionary(StringComparer.Ordinal);
    }
}
