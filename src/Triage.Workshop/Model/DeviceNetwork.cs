using System.Collections.Immutable;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Model;

/// <summary>The network of one device, and how to find notes in it.</summary>
public sealed record DeviceNetwork
{
    public required DeviceScope Scope { get; init; }

    public required Network Network { get; init; }

    /// <summary>Index of a finding, by finding id, or by <see cref="Measurement"/> of a test id.</summary>
    public required ImmutableDictionary<string, int> Findings { get; init; }

    /// <summary>The (root, state) pairs in which a fault is present.</summary>
    public required ImmutableDictionary<string, ImmutableArray<(int Root, int State)>> Faults { get; init; }

    /// <summary>Name under which the outcome of a test that measures a part stands among the findings.</summary>
    public static string Measurement(string test) => MeasurementPrefix + test;

    internal const string MeasurementPrefix = "measured:";

    public IEnumerable<string> FaultsIn(int root, int state) => Network.Roots[root].States[state].Faults;

    /// <summary>Of each fault, how likely it is present.</summary>
    internal IEnumerable<KeyValuePair<string, double>> ChancesOf(IEnumerable<Hypothesis> belief) => belief
        .SelectMany(h => h.Faulty.SelectMany(f => FaultsIn(f.Root, f.State)).Distinct().Select(fault => (fault, h.Probability)))
        .GroupBy(x => x.fault, x => x.Probability, StringComparer.Ordinal)
        .Select(g => KeyValuePair.Create(g.Key, g.Sum()));
}
