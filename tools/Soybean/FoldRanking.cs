using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Reasoning.Learning;
using Triage.Workshop.Answers;
using Triage.Workshop.Knowledge;
using Triage.Workshop.Translating;

namespace Triage.Tools.Soybean;

/// <summary>Held-out jobs ranked by what the other folds teach, read as P(cause | findings and exactly one listed fault).</summary>
internal sealed class FoldRanking
{
    private readonly SoybeanCases cases;
    private readonly ImmutableArray<Job> held;
    private readonly Notebook notes;
    private readonly CountedJobs counted;

    public FoldRanking(SoybeanCases cases, ImmutableArray<Job> held)
    {
        (this.cases, this.held) = (cases, held);
        notes = held.Aggregate(cases.Bench.Notes, (book, job) => book.Without(job.Id));
        counted = CountedJobs.Of(notes, _ => 1);
    }

    public static ImmutableArray<Prediction> All(SoybeanCases cases, Func<FoldRanking, ImmutableArray<Prediction>> rank) =>
        [.. cases.Folds.AsParallel().AsOrdered().Select(held => rank(new(cases, held))).SelectMany(fold => fold)];

    /// <summary>As in every answer of the bench: network, evidence, posterior.</summary>
    public ImmutableArray<Prediction> Answers()
    {
        var scope = DeviceScope.Of(notes, null, notes.Of<DeviceClass>().Single());
        var network = NetworkFromNotes.Build(scope, counted.Learned, notes, []);
        var actions = new ActionsOfNotes(network, notes, counted.Learned);
        return [.. held.Select(job => Forecast(job, SingleCauses.Of(network, EvidenceFromJob.Of(job.Log, network, actions, notes), counted.Learned).Chances))];
    }

    private Prediction Forecast(Job job, ImmutableDictionary<string, double> chances) => new([.. cases.Causes.Select(c => chances[c])], Truth(job));

    private int Truth(Job job) => cases.Causes.IndexOf(job.Causes[0].Fault);
}
