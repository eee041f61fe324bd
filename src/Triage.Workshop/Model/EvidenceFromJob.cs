using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Reasoning.Networks;
using Triage.Workshop.Jobs;
using Triage.Workshop.Knowledge;
using Triage.Workshop.Readings;
using Finding = Triage.Reasoning.Networks.Finding;

namespace Triage.Workshop.Model;

/// <summary>A job's log as evidence on its device's network, and which log entry each piece came from.</summary>
public sealed record JobEvidence
{
    public required Evidence Evidence { get; init; }

    /// <summary>Log entry behind each observation, by index.</summary>
    public required ImmutableArray<LogEntry> ObservedIn { get; init; }

    /// <summary>Log entry behind each likelihood.</summary>
    public required ImmutableArray<LogEntry> MeasuredIn { get; init; }

    /// <summary>Log entry behind each action.</summary>
    public required ImmutableArray<LogEntry> ActedIn { get; init; }

    /// <summary>Entries that say something the notes do not know (yet): shown, not reasoned with.</summary>
    public required ImmutableArray<LogEntry> NotUsed { get; init; }

    /// <summary>Readings that were not weighed: why, and what to do.</summary>
    public ImmutableArray<string> ReadingRemarks { get; init; } = [];

    /// <summary>Whether the last thing that was done seemed to work, and a sign of the fault was seen again after it.</summary>
    public bool SeenAgainAfter(LogEntry action) =>
        action.EffectSeen() == Effect.Works && !ActedIn.IsEmpty && ActedIn[^1] == action && Evidence.Actions[^1].Outcome is ActionOutcome.NotSeen;

    /// <summary>Number of the value last seen of a finding; null when it was never looked for.</summary>
    public int? Last(string finding, DeviceNetwork network) =>
        network.Findings.TryGetValue(finding, out var index) ? Evidence.Observations.LastOrDefault(o => o.Finding == index)?.Value : null;
}

/// <summary>Reads a job's log from the oldest entry on; each action begins a new epoch.</summary>
internal sealed class EvidenceFromJob
{
    /// <summary>What is doubted more says next to nothing.</summary>
    private const double MostDoubt = 0.95;

    private readonly DeviceNetwork network;
    private readonly ActionsOfNotes actions;
    private readonly Notebook notes;
    private readonly List<(Observation Seen, LogEntry Entry)> observed = [];
    private readonly List<(RootLikelihood Measured, LogEntry Entry)> measured = [];
    private readonly List<(ActionTaken Taken, LogEntry Entry)> acted = [];
    private readonly List<LogEntry> notUsed = [];
    private readonly ReadingEvidence readings;
    private readonly List<(Read Entry, int Epoch)> read = [];
    private readonly List<Test> measuring = [];
    private readonly List<string> readingRemarks = [];

    private EvidenceFromJob(DeviceNetwork network, ActionsOfNotes actions, Notebook notes, ReadingEvidence readings) =>
        (this.network, this.actions, this.notes, this.readings) = (network, actions, notes, readings);

    public static JobEvidence Of(IReadOnlyCollection<LogEntry> log, DeviceNetwork network, ActionsOfNotes actions, Notebook notes, BenchSettings? settings = null)
    {
        var judge = new ReadingJudge(network.Scope, notes, settings ?? new(), log);
        var reading = new EvidenceFromJob(network, actions, notes, new(network, judge));
        foreach (var entry in log)
            reading.Take(entry);
        reading.WeighReadings();
        return new()
        {
            Evidence = new()
            {
                Observations = [.. reading.observed.Select(o => o.Seen)],
                Likelihoods = [.. reading.measured.Select(m => m.Measured)],
                Actions = [.. reading.acted.Select(a => a.Taken)],
            },
            ObservedIn = [.. reading.observed.Select(o => o.Entry)],
            MeasuredIn = [.. reading.measured.Select(m => m.Entry)],
            ActedIn = [.. reading.acted.Select(a => a.Entry)],
            NotUsed = [.. reading.notUsed],
            ReadingRemarks = [.. reading.readingRemarks],
        };
    }

    private void Take(LogEntry entry)
    {
        switch (entry)
        {
            case Saw saw:
                Observe(notes.Today(saw.Finding), saw.Value, entry, ConditionWords.Read(saw.When), saw.WatchedMinutes, 1 - (saw.Sure ?? 1));
                break;
            case Read typed:
                read.Add((typed, acted.Count));
                break;
            case Tested tested:
                if (notes.Find<Test>(tested.Test) is { Reveals: null, Decides: null } test)
                    measuring.Add(test);
                Observe(Revealed(tested.Test), tested.Outcome, entry, Conditions.None, null);
                break;
            case ResetTried reset:
                Act(reset.Reset, reset.Effect, entry);
                break;
            case Fixed fix:
                WeighReadings();
                Act(fix.Fix, fix.Effect, entry);
                break;
            case Swapped swap:
                WeighReadings();
                Swap(swap);
                break;
            case Held held:
                Hold(held);
                break;
        }
    }

    /// <summary>A repair may change the part: readings before and after it are of two states. A reset changes no part.</summary>
    private void WeighReadings()
    {
        foreach (var weighed in readings.Of(read, measuring))
        {
            if (weighed.Likelihood is { } likelihood)
                measured.Add((likelihood, weighed.Entry));
            else
                readingRemarks.Add(weighed.Remark!);
        }

        read.Clear();
        measuring.Clear();
    }

    private string? Revealed(string testId) =>
        notes.Find<Test>(testId) is { } test ? test.Reveals is { } finding ? notes.Today(finding) : DeviceNetwork.Measurement(test.Id) : null;

    /// <summary>Looking again in the same state and circumstances replaces what was seen before: it is not a second, independent look.</summary>
    private void Observe(string? finding, string value, LogEntry entry, Conditions under, double? watched, double doubt = 0)
    {
        if (finding is null || !network.Findings.TryGetValue(finding, out var index) || network.Network.Findings[index].Values.IndexOf(value) is var v && v < 0)
        {
            notUsed.Add(entry);
            return;
        }

        if (finding.StartsWith(DeviceNetwork.MeasurementPrefix, StringComparison.Ordinal))
        {
            Measure(network.Network.Findings[index], v, entry);
            return;
        }

        if (IsThereAgain(index, v))
            acted[^1] = (acted[^1].Taken with { Outcome = ActionOutcome.NotSeen }, acted[^1].Entry);

        observed.RemoveAll(o => o.Seen.Finding == index && o.Seen.Under == under && SameStateSince(o.Seen.Epoch));
        observed.Add((new(index, v, acted.Count) { Under = under, WatchedMinutes = watched, Doubt = Math.Min(doubt, MostDoubt) }, entry));
    }

    /// <summary>What seemed to work did not: a sign that was there before it is there after it.</summary>
    private bool IsThereAgain(int finding, int value) =>
        value > 0 && !network.Network.Findings[finding].Nominal && acted is [.., { Taken: { Outcome: ActionOutcome.Works, Held: null } }]
        && observed.Exists(o => o.Seen.Finding == finding && o.Seen.Value == value && o.Seen.Epoch < acted.Count);

    /// <summary>Nothing was done since, or only resets that changed nothing.</summary>
    private bool SameStateSince(int epoch) => acted.Skip(epoch).All(a => a is { Taken.Outcome: ActionOutcome.StillFaulty, Entry: ResetTried });

    /// <summary>
    /// A part that is measured shows what it is like even while a reset keeps its fault from showing: a likelihood over its root.
    /// Measuring again in the same way replaces what was measured before.
    /// </summary>
    private void Measure(Finding measurement, int value, LogEntry entry)
    {
        var root = measurement.Links[0].Root;
        var likelihoods = network.Network.Roots[root].States
            .Select((_, state) => (measurement.Links.FirstOrDefault(l => l.State == state)?.Produces ?? measurement.Ambient)[value]);
        measured.RemoveAll(m => m.Measured.Epoch == acted.Count && m.Entry is Tested before && entry is Tested now && before.Test == now.Test);
        measured.Add((new(root, [.. likelihoods], acted.Count), entry));
    }

    private void Act(string id, Effect effect, LogEntry entry)
    {
        if (actions.Clearings(id) is not { } clears)
        {
            notUsed.Add(entry);
            return;
        }

        acted.Add((new(actions.GeneralForm(id), clears, Outcome(effect)), entry));
    }

    /// <summary>A swap that works is a fix; the old part back and the fault returned shows that part bad whatever else is wrong.</summary>
    private void Swap(Swapped swap)
    {
        if (swap.Fix is null)
        {
            notUsed.Add(swap);
            return;
        }

        if (swap.OldBack is { } returned && actions.Clearings(swap.Fix) is { } clears)
            measured.AddRange(SwapLikelihood.Of(network.Network, clears, returned, acted.Count).Select(l => (l, (LogEntry)swap)));
        Act(swap.Fix, swap.Effect, swap);
    }

    /// <summary>What was seen while a fault was only silenced says nothing about the state after it came back.</summary>
    private void Hold(Held held)
    {
        var id = actions.GeneralForm(held.Action);
        var at = acted.FindLastIndex(a => a.Taken.Id == id && a.Taken.Outcome == ActionOutcome.Works);
        if (at < 0)
        {
            notUsed.Add(held);
            return;
        }

        var (taken, entry) = acted[at];
        if (!held.StillWorks)
            observed.RemoveAll(o => o.Seen.Epoch == at + 1);
        if (held.StillWorks || entry is ResetTried)
        {
            acted[at] = (taken with { Held = held.StillWorks }, held);
            return;
        }

        acted[at] = (ComebackLikelihood.Undone(taken), entry);
        measured.AddRange(ComebackLikelihood.Of(network.Network, taken.Clears, at).Select(l => (l, (LogEntry)held)));
    }

    private static ActionOutcome Outcome(Effect effect) => effect switch
    {
        Effect.Works => ActionOutcome.Works,
        Effect.NoChange or Effect.Worse => ActionOutcome.StillFaulty,
        Effect.NotSeen => ActionOutcome.NotSeen,
    };
}
