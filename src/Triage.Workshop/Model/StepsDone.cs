using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Workshop.Jobs;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Model;

/// <summary>
/// What needs no doing on a job: everything that was done, passed over or could not be told, what is pointless after what was seen, and every test whose findings are known
/// already: looking again tells nothing new (a reset or fix that worked and held changes the state, but then there is nothing left to look for).
/// </summary>
internal sealed class StepsDone(DeviceNetwork network, Job job, JobEvidence evidence)
{
    /// <summary>
    /// Faults that are likely in spite of all: what decides or mends them is not pointless, as long as it puts no power on the machine (what bars
    /// power may be a burnt smell).
    /// </summary>
    public IEnumerable<Fault> Likely { get; init; } = [];

    /// <summary>Ids of tests, rounds, findings asked for, resets, fixes and ways of ending.</summary>
    public IReadOnlySet<string> Ids => field ??= All();

    public bool Has(string step) => Ids.Contains(step);

    /// <summary>Whether the machine's network has the finding.</summary>
    public bool CanShow(string finding) => network.Findings.ContainsKey(finding);

    public bool Knows(string finding) =>
        network.Findings.TryGetValue(finding, out var index) && evidence.Evidence.Observations.Any(o => o.Finding == index);

    /// <summary>Rows of a round that are not known yet and were not passed over.</summary>
    public ImmutableArray<string> LeftOf(Test round) =>
        [.. round.Round.Where(f => network.Findings.ContainsKey(f) && !Knows(f) && !Passed.Contains(f) && !Pointless.Contains(f))];

    /// <summary>Under which finding the outcome of a test that is no round stands in the network.</summary>
    public static string FindingOf(Test test) => test.Reveals ?? DeviceNetwork.Measurement(test.Id);

    private HashSet<string> Passed => field ??= [.. job.Log.OfType<Skipped>().Select(s => s.Step)];

    /// <summary>What the class leaves alone after what was seen.</summary>
    private HashSet<string> Pointless => field ??= [.. network.Scope.Class.Pointless.Where(Seen).SelectMany(p => p.Then).Except(FollowedUp())];

    private IEnumerable<string> FollowedUp()
    {
        var likely = Likely.ToList();
        return likely.SelectMany(f => f.Mends).Where(m => m.Effort.Power is PowerStage.Cold).Select(m => m.Id)
            .Concat(network.Scope.Tests.Where(t => t.Effort.Power is PowerStage.Cold && likely.Exists(f => t.DecidesOrMeasures(f))).Select(t => t.Id));
    }

    private bool Seen(Pointless pointless) => evidence.Last(pointless.Finding, network) is { } value
        && (pointless.Values.IsEmpty ? value != 0 : pointless.Values.Contains(network.Network.Findings[network.Findings[pointless.Finding]].Values[value]));

    private HashSet<string> All()
    {
        var done = job.Log.Select(e => e switch { Tested t => t.Test, RoundDone r when r.Round != AlwaysThere.LookItOver => r.Round, _ => e.Action() }).OfType<string>().Concat(Passed).ToHashSet(StringComparer.Ordinal);
        done.UnionWith(Pointless);
        done.UnionWith(network.Scope.Tests.Where(t => t.Round.IsEmpty ? Knows(FindingOf(t)) || done.Contains(FindingOf(t)) : LeftOf(t).IsEmpty).Select(t => t.Id));
        return done;
    }
}
