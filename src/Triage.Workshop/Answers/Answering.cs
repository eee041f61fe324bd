using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Reasoning.Learning;
using Triage.Workshop.Answers.Wording;
using Triage.Workshop.Chances;
using Triage.Workshop.Knowledge;
using Triage.Workshop.Model;

namespace Triage.Workshop.Answers;

/// <summary>From a job's log to an answer: evidence → posterior → plan, in one direction.</summary>
internal sealed class Answering(BenchKnowledge known)
{
    /// <summary>What the planner gets: enough that one more hypothesis changes no step, few enough to answer while one waits.</summary>
    private const int MostHypotheses = 400;

    /// <summary>Mass that may be left to the unlisted fault.</summary>
    private const double LeftToTheUnlisted = 1e-4;

    /// <summary>The answer, or why there can be none: nobody knows the machine, or the program failed at this one.</summary>
    public Asked For(Job job) =>
        known.Mishaps.Or(job.Place?.Path ?? "", "working out the answer", () => known.ScopeOf(job) is { } scope ? new(Answer(job, scope), null) : new(null, UnknownMachine(job)), Failed);

    /// <summary>The network of a job's device under other learned numbers (what if a job had not been closed?).</summary>
    public Reasoned Reason(Job job, DeviceScope scope, Learned learned)
    {
        var seen = job.Log.OfType<Saw>().Select(s => s.Finding).Concat(job.Log.OfType<Tested>().Select(t => known.Notes.Find<Test>(t.Test)?.Reveals).OfType<string>());
        var network = NetworkFromNotes.Build(scope, learned, known.Notes, seen);
        var actions = new ActionsOfNotes(network, known.Notes, learned);
        var evidence = EvidenceFromJob.Of(job.Log, network, actions, known.Notes, known.Settings);
        return Reasoned.Of(network, actions, evidence, learned);
    }

    /// <summary>P(the fault was there when this machine came in); null when it cannot be met in it, or nobody knows the machine.</summary>
    public double? Chance(Job job, string fault)
    {
        if (known.ScopeOf(job) is not { } scope || scope.Faults.All(f => f.Id != fault))
            return null;
        return Reason(job, scope, known.Learned).AtFirst(fault);
    }

    private static Asked Failed(Notes.Problem wrong) => new(null, WorkshopRefusals.NoAnswer(wrong));

    private Refusal UnknownMachine(Job job)
    {
        var meant = MachineNames.Resolve(job.Device ?? job.Unit ?? "", job.Complaint, known.Notes);
        return WorkshopRefusals.UnknownMachine(meant.Said, meant.CanBe, known.Notes.Of<DeviceClass>().Select(c => c.Name));
    }

    private Answer Answer(Job job, DeviceScope scope)
    {
        var reasoned = Reason(job, scope, known.Learned);
        var words = new WordsFor(known.Notes, scope.Access);
        var evidence = InWords(job, reasoned.Evidence, words);
        var common = new Answer
        {
            Machine = scope.Name,
            Cautions = scope.Cautions,
            StopAtOnce = scope.StopAtOnce,
            Untold = scope.Untold,
            Protect = [.. new ProtectFirst(job, reasoned).Due().Select(p => new ProtectStep(p.Id, p.Name, p.Loses))],
            Causes = [],
            Resets = [],
            Next = null,
            Evidence = evidence,
            Remarks = [.. reasoned.Evidence.NotUsed.Select(e => $"Not used, no note links it to a cause of this machine: {words.Entry(e)}"), .. reasoned.Evidence.ReadingRemarks, .. StepsNotThere.Of(reasoned, words)],
        };
        if (reasoned.Posterior.Contradiction)
            return common with { Remarks = [ContradictionInWords.Of(reasoned, words), .. common.Remarks] };
        var hypotheses = reasoned.Hypotheses(MostHypotheses, LeftToTheUnlisted);
        var rules = new HardRules(scope, known.Notes, job, known.Settings);
        var planning = Task.Run(() => new NextSteps(known, job, reasoned, rules, words).Of(hypotheses));
        var causes = new RankedCauses(known, this, job, reasoned, words).Of();
        var next = planning.GetAwaiter().GetResult();
        return common with
        {
            Works = MachineWorks.After(job, reasoned.Evidence),
            Causes = causes,
            FirmlyFirst = new(() => FirstPlaceInWords.Of(reasoned, known.Notes, words, MachineWorks.After(job, reasoned.Evidence))),
            Resets = new ResetsWorthTrying(known, job, reasoned, rules).Of(hypotheses),
            Counter = new AtTheCounter(job, reasoned).Questions(hypotheses),
            ForOwner = new ForTheOwner(reasoned, known.Settings).Say(causes, next),
            Next = next,
            Remarks = [.. NoneOfThese.Remarks(causes, next), .. ComeTogetherInWords.Of(causes, reasoned, words), .. common.Remarks],
            LeftOut = reasoned.Posterior.LeftOut,
            SingleCauses = new(() => reasoned.Single.Chances),
        };
    }

    private static ImmutableArray<EvidenceInWords> InWords(Job job, JobEvidence evidence, WordsFor words) =>
        [.. evidence.ObservedIn.Concat(evidence.MeasuredIn).Concat(evidence.ActedIn).Distinct()
            .Select(e => new EvidenceInWords(words.Entry(e), job.Log.IndexOf(e), (e as Saw)?.Words))
            .OrderBy(e => e.Entry)];
}

/// <summary>An answer, or why there is none.</summary>
public sealed record Asked(Answer? Answer, Refusal? Refused);
