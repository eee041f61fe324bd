using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;
using Triage.Reasoning.Planning;
using Triage.Workshop.Jobs;
using Triage.Workshop.Knowledge;
using PlanAccess = Triage.Reasoning.Planning.AccessStep;

namespace Triage.Workshop.Model;

/// <summary>What can be done next on a job, as the planner wants it.</summary>
internal sealed class ProblemFromJob(DeviceNetwork network, ActionsOfNotes actions, HardRules rules, Job job, JobEvidence evidence, BenchSettings settings, HypothesisSet hypotheses)
{
    /// <summary>A cause this likely is followed up, whatever else was seen.</summary>
    private const double Likely = 0.15;

    /// <summary>Nobody gives back, as in order, what very likely is not.</summary>
    private const double MayBeInOrder = 0.25;

    private readonly ImmutableArray<Hypothesis> belief = WholeBelief(network, hypotheses);

    private StepsDone Done => field ??= new(network, job, evidence) { Likely = LikelyFaults() };

    public RepairProblem Of()
    {
        var rounds = Rounds().ToList();
        var inRounds = rounds.Where(r => r.Blocked is null).SelectMany(r => r.Reveals).Select(f => f.Id).ToHashSet(StringComparer.Ordinal);
        var looks = SmallLooks.Of(network.Scope, Done, rules).Where(f => !inRounds.Contains(f)).Select(Revealed).ToList();
        var bundled = looks.Select(f => f.Id).Concat(inRounds).ToHashSet(StringComparer.Ordinal);
        var options = Tests(bundled).Concat(rounds).Concat(LookItOver(looks)).Concat(Calls()).Concat(Resets()).Concat(Fixes()).Concat(Always()).ToList();
        var known = options.Select(o => o.Id).Concat(Done.Ids).ToHashSet(StringComparer.Ordinal);
        return new()
        {
            Belief = belief,
            Options = [.. options.Select(o => o with { After = [.. o.After.Where(known.Contains)] }), .. Stops(options.Exists(o => o is { Id: AlwaysThere.HandOver, Blocked: null }))],
            Access = new([.. network.Scope.Access.Select(s => new PlanAccess(s.Id, s.Minutes, s.Behind))]),
            Open = [.. OpenSteps.Of(job.Log).Where(network.Scope.Has)],
            Done = [.. Done.Ids],
            Rates = settings.Rates,
        };
    }

    /// <param name="bundled">Findings that a round shows: a small look at one of them is not made by itself.</param>
    private IEnumerable<Option> Tests(HashSet<string> bundled) =>
        network.Scope.Tests
            .Where(t => t.Round.IsEmpty && network.Findings.ContainsKey(StepsDone.FindingOf(t)) && !Done.Has(t.Id))
            .Where(t => t.Way == TestWay.Ask ? !job.NoOwner && !AtTheCounter : !(SmallLooks.IsSmall(t) && bundled.Contains(StepsDone.FindingOf(t))))
            .Select(t => new TestOption(t.Id, t.Way == TestWay.Ask ? OwnersAnswer : Expense(t.Effort), Revealed(StepsDone.FindingOf(t)))
            {
                Access = network.Scope.Behind(t.Effort),
                After = rules.After(t.Effort),
                Blocked = rules.Forbids(t.Effort),
            });

    /// <summary>Rounds without what is known already and what would tell next to nothing.</summary>
    private IEnumerable<RoundOption> Rounds() =>
        from round in network.Scope.Tests
        where !round.Round.IsEmpty && !Done.Has(round.Id)
        let telling = WorthAsking.Of(belief, [.. Done.LeftOf(round).Select(Revealed)])
        where telling.Length > 0
        select new RoundOption(round.Id, Expense(round.Effort), [.. telling.Select(t => t.Finding)])
        {
            Access = network.Scope.Behind(round.Effort),
            After = rules.After(round.Effort),
            Blocked = rules.Forbids(round.Effort),
        };

    /// <summary>All small looks that can be made now, as one list: those that tell most.</summary>
    private IEnumerable<Option> LookItOver(List<Triage.Reasoning.Networks.Finding> looks)
    {
        var telling = WorthAsking.Of(belief, looks).OrderByDescending(f => f.Bits).Take(SmallLooks.Most).Select(f => f.Finding).ToImmutableArray();
        if (!telling.IsEmpty)
            yield return new RoundOption(AlwaysThere.LookItOver, new(settings.HandlingMinutes + (telling.Length - 1) * SmallLooks.MinutesEach), telling);
    }

    /// <summary>What only the owner knows costs a call once he has left.</summary>
    private IEnumerable<Option> Calls() =>
        from finding in network.Scope.Questions
        where network.Scope.Class.Counter.Contains(finding.Id) && !AtTheCounter && !job.NoOwner
        where !Done.Knows(finding.Id) && !Done.Has(finding.Id) && network.Findings.ContainsKey(finding.Id)
        select new TestOption(finding.Id, OwnersAnswer, Revealed(finding.Id));

    private Triage.Reasoning.Networks.Finding Revealed(string finding) => network.Network.Findings[network.Findings[finding]];

    private bool AtTheCounter => CounterHours.IsOpen(job);

    private Expense OwnersAnswer => new(settings.OwnerCall.Minutes, WaitDays: settings.OwnerCall.Days);

    private IEnumerable<Option> Resets() =>
        network.Scope.Resets.Where(r => !Done.Has(r.Id)).Select(r => new FixOption(r.Id, Expense(r.Effort), actions.Clearings(r.Id) ?? [])
        {
            Access = network.Scope.Behind(r.Effort),
            After = rules.After(r.Effort, r.Erases is not null),
            Blocked = rules.Forbids(r),
        });

    private IEnumerable<Option> Fixes() =>
        actions.Fixes.Values.Where(m => !Done.Has(m.Id)).Select(m => new FixOption(m.Id, Expense(m.Effort), actions.Clearings(m.Id) ?? [])
        {
            Access = network.Scope.Behind(m.Effort),
            After = rules.After(m.Effort),
            Blocked = rules.Forbids(m.Effort),
            CheckedBy = [.. actions.ChecksOf(m.Id)],
        });

    private IEnumerable<Option> Always() => [.. HandBack(), .. rules.MustAsk ? [AskConsent()] : Array.Empty<Option>(), .. HandOver(), .. Exchange()];

    /// <summary>Tells nothing of the fault; what erases comes after it.</summary>
    private static TestOption AskConsent() =>
        new(AlwaysThere.AskConsent, new(AlwaysThere.MinutesOf(AlwaysThere.AskConsent)), new(AlwaysThere.AskConsent, ["agreed, or saved", "it has to stay"], [1, 0], []));

    private IEnumerable<FixOption> HandBack()
    {
        var clears = actions.Clearings(AlwaysThere.HandBack) ?? [];
        if (ShareOf(clears) >= MayBeInOrder)
            yield return new(AlwaysThere.HandBack, new(AlwaysThere.MinutesOf(AlwaysThere.HandBack)), clears);
    }

    /// <summary>Somebody licensed mends what may not be mended here, and only that; what else it is stays.</summary>
    private IEnumerable<FixOption> HandOver()
    {
        var licensed = actions.Fixes.Values.Where(m => !Done.Has(m.Id) && rules.NeedsLicence(m.Effort)).SelectMany(m => actions.Clearings(m.Id) ?? [])
            .GroupBy(c => (c.Root, c.State)).Select(same => same.MaxBy(c => c.Works * c.Holds)!).ToImmutableArray();
        if (!licensed.IsEmpty && !Done.Has(AlwaysThere.HandOver))
        {
            yield return new(AlwaysThere.HandOver, HandingOver, licensed)
            {
                Blocked = rules.OverTheLimit(settings.HandOverPrice) ?? (IsTheirs(licensed) ? null : "What it is may still be mended here: find out first."),
            };
        }
    }

    private Expense HandingOver => new(AlwaysThere.MinutesOf(AlwaysThere.HandOver), settings.HandOverPrice, AlwaysThere.HandOverDays);

    /// <summary>One hands over what is likelier than not for somebody else to mend, or likelier theirs than anything that may still be mended here.</summary>
    private bool IsTheirs(ImmutableArray<Clearing> licensed)
    {
        var ours = actions.Fixes.Values.Where(m => !Done.Has(m.Id) && !rules.NeedsLicence(m.Effort)).SelectMany(m => actions.Clearings(m.Id) ?? []).ToImmutableArray();
        var theirs = ShareOf(licensed);
        return theirs >= 0.5 || (theirs >= Likely && theirs > ShareOf(ours));
    }

    /// <summary>How likely it is one of these states.</summary>
    private double ShareOf(ImmutableArray<Clearing> cleared)
    {
        var states = cleared.Select(c => (c.Root, c.State)).ToHashSet();
        return belief.Where(h => h.Faulty.Any(f => states.Contains((f.Root, f.State)))).Sum(h => h.Probability);
    }

    /// <summary>A whole new one, where that is what one does.</summary>
    private IEnumerable<FixOption> Exchange()
    {
        if (network.Scope.Class.Exchange is { } whole && network.Scope.Fits(whole.Build) && !Done.Has(AlwaysThere.Exchange))
            yield return new(AlwaysThere.Exchange, Expense(whole.Effort), actions.Clearings(AlwaysThere.Exchange) ?? []) { Blocked = rules.OverTheLimit(whole.Effort.Money) };
    }

    /// <summary>
    /// Whether what only somebody licensed may mend is worth that, the owner says; while nobody has asked, it counts as worth twice its price, in money.
    /// </summary>
    private double WorthHandingOver => 2 * HandingOver.At(settings.Rates);

    /// <param name="handedOver">It may be handed over now.</param>
    private IEnumerable<Option> Stops(bool handedOver)
    {
        var worth = job.Worth ?? Math.Max(network.Scope.Class.UsualWorth ?? settings.UsualWorth, handedOver ? WorthHandingOver : 0);
        yield return new StopOption(AlwaysThere.Park, new(0, worth));
        yield return new StopOption(AlwaysThere.PartOut, new(AlwaysThere.MinutesOf(AlwaysThere.PartOut), worth * (1 - AlwaysThere.PartsKeep)))
        {
            Blocked = network.Scope.Access.Any(a => rules.NeedsLicence(new() { Access = a.Id })) ? "Taking it apart is for somebody licensed too." : null,
        };
        if (job.Log.OfType<ResetTried>().GroupBy(r => r.Reset, StringComparer.Ordinal).Any(WorksEveryTime))
            yield return new StopOption(AlwaysThere.WorkAround, new(0, worth * AlwaysThere.WorkAroundLoses));
    }

    /// <summary>A reset that brings the machine back whenever it is done, though the trouble returns.</summary>
    private bool WorksEveryTime(IGrouping<string, ResetTried> tries) =>
        tries.All(r => r.Effect == Effect.Works) && job.Log.OfType<Held>().Any(h => h.Action == tries.Key && !h.StillWorks);

    private IEnumerable<Fault> LikelyFaults()
    {
        var chances = network.ChancesOf(belief).ToDictionary(StringComparer.Ordinal);
        return network.Scope.Faults.Where(f => chances.GetValueOrDefault(f.Id) >= Likely);
    }

    /// <summary>Mass that the hypotheses leave out counts as the unlisted fault.</summary>
    private static ImmutableArray<Hypothesis> WholeBelief(DeviceNetwork network, HypothesisSet hypotheses)
    {
        var listed = hypotheses.Listed.Sum(h => h.Probability);
        if (listed >= 1 || !network.Faults.TryGetValue(SpecialFaults.Unlisted, out var places))
            return [.. hypotheses.Listed.Select(h => h with { Probability = h.Probability / listed })];
        return [.. hypotheses.Listed, new(1 - listed, [new(places[0].Root, places[0].State)])];
    }

    private static Expense Expense(Effort effort) =>
        new(effort.Minutes, effort.Money, effort.WaitDays, effort.HarmChance?.Probability ?? 0, effort.HarmPrice) { WaitMinutes = effort.WaitMinutes };
}
