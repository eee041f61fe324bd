using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Planning;
using Triage.Workshop.Jobs;
using Triage.Workshop.Knowledge;
using PlanAccess = Triage.Reasoning.Planning.AccessStep;

namespace Triage.Workshop.Model;

/// <summary>What can be done next on a job, as the planner wants it.</summary>
internal sealed class ProblemFromJob(DeviceNetwork network, ActionsOfNotes actions, Job job, JobEvidence evidence, BenchSettings settings)
{
    /// <summary>Minutes to ask the owner something that needs no test of its own (common practice, no source).</summary>
    private const double AskMinutes = 1;

    private readonly Consents rules = new(network.Scope.Class, job, settings);

    public RepairProblem Of(HypothesisSet hypotheses)
    {
        var options = Tests().Concat(Questions()).Concat(Resets()).Concat(Fixes()).Concat(Always()).ToList();
        var known = options.Select(o => o.Id).Concat(Done).ToHashSet(StringComparer.Ordinal);
        return new()
        {
            Belief = WholeBelief(hypotheses),
            Options = [.. options.Select(o => o with { After = [.. o.After.Where(known.Contains)] }), .. Stops()],
            Access = new([.. network.Scope.Access.Select(s => new PlanAccess(s.Id, s.Minutes, s.Behind))]),
            Open = OpenNow(),
            Done = [.. Done],
            Rates = settings.Rates,
        };
    }

    /// <summary>Access steps of this machine that are open after the whole log.</summary>
    private ImmutableArray<string> OpenNow() =>
        [.. OpenSteps.Of(job.Log).Where(network.Scope.Has)];

    /// <summary>
    /// Everything that was done, and every test whose finding is known already: looking again tells nothing new
    /// (a reset or fix that worked and held changes the state, but then there is nothing left to look for).
    /// </summary>
    private HashSet<string> Done => field ??= [.. job.Log.Select(e => e is Tested t ? t.Test : e.Action()).OfType<string>(), .. network.Scope.Tests.Where(t => Observed(FindingOf(t))).Select(t => t.Id)];

    private static string FindingOf(Test test) => test.Reveals ?? DeviceNetwork.Measurement(test.Id);

    private bool Observed(string finding) =>
        network.Findings.TryGetValue(finding, out var index) && evidence.Evidence.Observations.Any(o => o.Finding == index);

    private IEnumerable<Option> Tests() =>
        network.Scope.Tests
            .Where(t => network.Findings.ContainsKey(FindingOf(t)) && !Done.Contains(t.Id))
            .Select(t => new TestOption(t.Id, Expense(t.Effort), network.Network.Findings[network.Findings[FindingOf(t)]])
            {
                Access = network.Scope.Behind(t.Effort),
                After = rules.After(t.Effort),
                Blocked = rules.Forbids(t.Effort),
            });

    private IEnumerable<Option> Questions() =>
        network.Scope.Questions.Where(f => !Observed(f.Id) && network.Findings.ContainsKey(f.Id))
            .Select(f => new TestOption(f.Id, new(AskMinutes), network.Network.Findings[network.Findings[f.Id]]));

    private IEnumerable<Option> Resets() =>
        network.Scope.Resets.Where(r => !Done.Contains(r.Id)).Select(r => new FixOption(r.Id, Expense(r.Effort), actions.Clearings(r.Id) ?? [])
        {
            Access = network.Scope.Behind(r.Effort),
            After = rules.After(r.Effort, r.Erases is not null),
            Blocked = rules.Forbids(r),
        });

    private IEnumerable<Option> Fixes() =>
        actions.Fixes.Values.Where(m => !Done.Contains(m.Id)).Select(m => new FixOption(m.Id, Expense(m.Effort), actions.Clearings(m.Id) ?? [])
        {
            Access = network.Scope.Behind(m.Effort),
            After = rules.After(m.Effort),
            Blocked = rules.Forbids(m.Effort),
        });

    private IEnumerable<Option> Always() => [HandBack(), .. rules.MustAsk ? [AskConsent()] : Array.Empty<Option>(), .. HandOver()];

    /// <summary>Tells nothing of the fault; what erases comes after it.</summary>
    private static TestOption AskConsent() =>
        new(AlwaysThere.AskConsent, new(AlwaysThere.MinutesOf(AlwaysThere.AskConsent)), new(AlwaysThere.AskConsent, ["agreed, or saved", "it has to stay"], [1, 0], []));

    private FixOption HandBack() => new(AlwaysThere.HandBack, new(AlwaysThere.MinutesOf(AlwaysThere.HandBack)), actions.Clearings(AlwaysThere.HandBack) ?? []);

    /// <summary>Somebody licensed mends what may not be mended here, and only that; what else it is stays.</summary>
    private IEnumerable<FixOption> HandOver()
    {
        var licensed = actions.Fixes.Values.Where(m => !Done.Contains(m.Id) && Consents.NeedsLicence(m.Effort)).SelectMany(m => actions.Clearings(m.Id) ?? [])
            .GroupBy(c => (c.Root, c.State)).Select(same => same.MaxBy(c => c.Works * c.Holds)!).ToImmutableArray();
        if (!licensed.IsEmpty)
        {
            yield return new(AlwaysThere.HandOver, new(AlwaysThere.MinutesOf(AlwaysThere.HandOver), settings.HandOverPrice, AlwaysThere.HandOverDays), licensed)
            {
                Blocked = rules.OverTheLimit(settings.HandOverPrice),
            };
        }
    }

    private IEnumerable<Option> Stops()
    {
        var worth = job.Worth ?? settings.UsualWorth;
        yield return new StopOption(AlwaysThere.Park, new(0, worth));
        yield return new StopOption(AlwaysThere.PartOut, new(AlwaysThere.MinutesOf(AlwaysThere.PartOut), worth * (1 - AlwaysThere.PartsKeep)));
        if (job.Log.OfType<ResetTried>().GroupBy(r => r.Reset, StringComparer.Ordinal).Any(WorksEveryTime))
            yield return new StopOption(AlwaysThere.WorkAround, new(0, worth * AlwaysThere.WorkAroundLoses));
    }

    /// <summary>A reset that brings the machine back whenever it is done, though the trouble returns.</summary>
    private bool WorksEveryTime(IGrouping<string, ResetTried> tries) =>
        tries.All(r => r.Effect == Effect.Works) && job.Log.OfType<Held>().Any(h => h.Action == tries.Key && !h.StillWorks);

    /// <summary>Mass that the hypotheses leave out counts as the unlisted fault.</summary>
    private ImmutableArray<Hypothesis> WholeBelief(HypothesisSet hypotheses)
    {
        var listed = hypotheses.Listed.Sum(h => h.Probability);
        if (listed >= 1 || !network.Faults.TryGetValue(SpecialFaults.Unlisted, out var places))
            return [.. hypotheses.Listed.Select(h => h with { Probability = h.Probability / listed })];
        return [.. hypotheses.Listed, new(1 - listed, [new(places[0].Root, places[0].State)])];
    }

    private static Expense Expense(Effort effort) =>
        new(effort.Minutes, effort.Money, effort.WaitDays, effort.HarmChance?.Probability ?? 0, effort.HarmPrice);
}
