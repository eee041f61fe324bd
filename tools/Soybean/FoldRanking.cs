using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Reasoning.Learning;
using Triage.Search.Causes;
using Triage.Workshop.Chances;
using Triage.Workshop.Knowledge;
using Triage.Workshop.Model;

namespace Triage.Tools.Soybean;

/// <summary>Held-out jobs ranked by what the other folds teach, read as P(cause | findings and exactly one listed fault).</summary>
internal sealed class FoldRanking
{
    private const int Seed = 1;

    private readonly SoybeanCases cases;
    private readonly ImmutableArray<Job> held;
    private readonly Notebook notes;
    private readonly CountedJobs counted;

    public FoldRanking(SoybeanCases cases, ImmutableArray<Job> held)
    {
        (this.cases, this.held) = (cases, held);
        notes = held.Aggregate(cases.Bench.Notes, (book, job) => book.Without(job.Id));
        counted = CountedJobs.Of(notes, _ => 1, new());
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

    /// <summary>By a classifier trained on the other folds.</summary>
    public ImmutableArray<Prediction> Discriminative(CauseTrainer trainer)
    {
        var classifier = CauseClassifier.Train([.. counted.InOrder.Select(r => new CauseExample(Known(r.Checked), r.Causes[0].Fault))], trainer, Seed)!;
        var chances = classifier.Chances(held.Select(job => Known(job.Log.OfType<Saw>().Select(s => new CheckedFinding(s.Finding, s.Value)))));
        return [.. held.Zip(chances, Forecast)];
    }

    private static ImmutableArray<string> Known(IEnumerable<CheckedFinding> seen) => [.. seen.Select(s => $"{s.Finding}={s.Value}")];

    private Prediction Forecast(Job job, ImmutableDictionary<string, double> chances) => new([.. cases.Causes.Select(c => chances[c])], Truth(job));

    private int Truth(Job job) => cases.Causes.IndexOf(job.Causes[0].Fault);
}
