using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Reasoning;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Learning;
using Triage.Workshop.Answers.Wording;
using Triage.Workshop.Chances;
using Triage.Workshop.Jobs;
using Triage.Workshop.Model;

namespace Triage.Workshop.Answers;

/// <summary>Every cause with its probability now, its interval, and what stands behind it.</summary>
internal sealed class RankedCauses(BenchKnowledge known, Answering answering, Job job, Reasoned reasoned, WordsFor words)
{
    /// <summary>Causes that get a full explanation; the rest only their number.</summary>
    private const int Explained = 6;

    /// <summary>Leading causes for which past jobs are left out one by one, and jobs per cause.</summary>
    private const int ComparedCauses = 2, ComparedJobs = 3;

    private const double Level = 0.9;

    /// <summary>Equal answers to equal questions.</summary>
    private const int Seed = 1;

    private readonly bool works = MachineWorks.After(job, reasoned.Evidence);

    public ImmutableArray<RankedCause> Of()
    {
        var ranked = reasoned.Network.Faults.Keys
            .Select(f => (Fault: f, Probability: Chance(reasoned, f)))
            .OrderByDescending(c => c.Probability).ThenBy(c => c.Fault, StringComparer.Ordinal)
            .ToList();
        var network = reasoned.Network.Network;
        var sampled = SampledIntervals.Of(network, reasoned.Evidence.Evidence, Seed, level: Level);
        var intervals = (works ? sampled.AtStart : sampled.Remaining).ToDictionary(i => i.Key, i => reasoned.Moved(i.Key, i.Value, !works), StringComparer.Ordinal);
        var weights = MovedWeights.Of(reasoned);
        return [.. ranked.Select((c, rank) => Cause(c.Fault, c.Probability, rank, intervals, weights))];
    }

    private double Chance(Reasoned of, string fault) => works ? of.AtFirst(fault) : of.Now(fault);

    private RankedCause Cause(string fault, double probability, int rank, IReadOnlyDictionary<string, Interval> intervals, ImmutableArray<ItemWeight> weights)
    {
        var weighed = rank < Explained ? Weighed(fault, weights) : [];
        var interval = intervals.GetValueOrDefault(fault, new(probability, probability)).With(probability);
        return new()
        {
            Fault = fault,
            Name = WordsFor.CauseName(fault, known.Notes),
            Probability = probability,
            Lower = interval.Lower,
            Upper = interval.Upper,
            Why = rank < Explained ? CausesInWords.Why(weighed, PartOf(fault), ForItsPart(fault, weights)) : "",
            Weights = weighed,
            Jobs = rank < Explained ? JobsBehind(fault, rank < ComparedCauses) : [],
        };
    }

    private ImmutableArray<WeighedEvidence> Weighed(string fault, ImmutableArray<ItemWeight> weights) =>
        [.. weights
            .Where(w => w.Item.Kind != EvidenceKind.SomethingIsWrong && w.Faults.TryGetValue(fault, out var decibans) && !double.IsNaN(decibans))
            .Select(w => new WeighedEvidence(Piece(w.Item), w.Faults[fault]))
            .OrderByDescending(w => Math.Abs(w.Decibans))];

    /// <summary>
    /// The same evidence for the part as a whole, whichever way it failed: what tells a part from all others may not tell its
    /// failure modes apart. Empty when the part has only one.
    /// </summary>
    private ImmutableArray<WeighedEvidence> ForItsPart(string fault, ImmutableArray<ItemWeight> weights)
    {
        var root = reasoned.Network.Faults[fault][0].Root;
        return reasoned.Network.Network.Roots[root].States.Length <= 2
            ? []
            : [.. weights
                .Where(w => w.Item.Kind != EvidenceKind.SomethingIsWrong && !double.IsNaN(w.States[root][0]))
                .Select(w => new WeighedEvidence(Piece(w.Item), -w.States[root][0]))];
    }

    private string PartOf(string fault)
    {
        var scope = reasoned.Network.Scope;
        var listed = scope.Faults.FirstOrDefault(f => f.Id == fault);
        return scope.Roles.FirstOrDefault(r => r.Id == listed?.Role)?.Name ?? known.Notes.Find<PartClass>(listed?.Part)?.Name ?? "part";
    }

    private string Piece(EvidenceItem item) => item.Kind switch
    {
        EvidenceKind.Observation => words.Entry(reasoned.Evidence.ObservedIn[item.Index]),
        EvidenceKind.Likelihood => words.Entry(reasoned.Evidence.MeasuredIn[item.Index]),
        EvidenceKind.Outcome => words.Entry(ActionEntry(item.Index)),
        EvidenceKind.Held => words.Entry(reasoned.Evidence.ActedIn[item.Index]),
        EvidenceKind.SomethingIsWrong => "something is wrong at all",
    };

    /// <summary>Where it held is known, the outcome itself is an earlier entry of the same action.</summary>
    private LogEntry ActionEntry(int action)
    {
        var entry = reasoned.Evidence.ActedIn[action];
        return entry is Held held
            ? job.Log.TakeWhile(e => e != held).LastOrDefault(e => e.Action() == held.Action) ?? entry
            : entry;
    }

    private ImmutableArray<JobBehind> JobsBehind(string fault, bool compare)
    {
        var scope = reasoned.Network.Scope;
        var jobs = known.Counted.Records.Values
            .Where(r => r.Causes.Any(c => c.Fault == fault))
            .OrderByDescending(r => r.Levels.Contains(scope.Levels[0])).ThenByDescending(r => r.Closed).ThenBy(r => r.Id, StringComparer.Ordinal)
            .Select(r => known.Notes.Find<Job>(r.Id))
            .OfType<Job>()
            .ToList();
        return [.. jobs.Select((j, i) => new JobBehind(j.Id, j.Name, MachineOf(j), Grade(j, fault)) { IfNotClosed = compare && i < ComparedJobs ? new(() => Without(j.Id, fault)) : null })];
    }

    private string MachineOf(Job other) => known.Notes.Find<Device>(other.Device)?.Name ?? other.Unit ?? other.Class ?? "";

    private Grade Grade(Job other, string fault) =>
        other.Causes.Where(c => known.Notes.Today(c.Fault) == fault).Select(c => c.Grade).DefaultIfEmpty(Notes.Kinds.Grade.HoldUnknown).Min();

    /// <summary>The same question as if that job had never been closed.</summary>
    private double Without(string other, string fault) =>
        Chance(answering.Reason(job, reasoned.Network.Scope, known.CountedWithout(other).Learned), fault);
}
