using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Reasoning.Learning;
using Triage.Reasoning.Networks;
using Triage.Workshop.Model;

namespace Triage.Workshop.Chances;

/// <summary>
/// Findings of the machine as it came in that were seen beyond doubt, under no special conditions, depend on none, and were not measured: those that past
/// jobs can have shown together.
/// </summary>
internal static class PlainFindings
{
    public static ImmutableArray<CheckedFinding> Of(DeviceNetwork network, JobEvidence evidence) =>
    [
        .. evidence.Evidence.Observations.Where((o, i) => IsPlain(o, evidence.ObservedIn[i], network))
            .Select(o => new CheckedFinding(network.Network.Findings[o.Finding].Id, network.Network.Findings[o.Finding].Values[o.Value])),
    ];

    /// <summary>The rest of the evidence.</summary>
    public static Evidence Without(DeviceNetwork network, JobEvidence evidence) => evidence.Evidence with
    {
        Observations = [.. evidence.Evidence.Observations.Where((o, i) => !IsPlain(o, evidence.ObservedIn[i], network))],
    };

    private static bool IsPlain(Observation seen, LogEntry entry, DeviceNetwork network) =>
        seen is { Epoch: 0, Under: Conditions.None, WatchedMinutes: null, Doubt: 0 }
        && network.Network.Findings[seen.Finding].Links.All(l => l is { When: Conditions.None, EveryMinutes: null })
        && !(entry is Tested tested && network.Scope.Tests.Any(t => t.Id == tested.Test && t.Way == TestWay.Measure));
}
