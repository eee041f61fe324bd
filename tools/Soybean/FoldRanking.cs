using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Reasoning.Learning;
using Triage.Workshop.Answers;
using Triage.Workshop.Knowledge;
using Triage.Workshop.Translating;

namespace Triage.Tools.Soybean;

/// <summary>
/// Held-out jobs ranked by what the other folds teach: learning, network and evidence as in every answer, read as
/// P(cause | findings and exactly one listed fault).
/// </summary>
internal static class FoldRanking
{
    public static ImmutableArray<FoldPredictions> All(SoybeanCases cases) =>
        [.. cases.Folds.AsParallel().AsOrdered().Select(held => Of(cases, held))];

    public static FoldPredictions Of(SoybeanCases cases, ImmutableArray<Job> held)
    {
        var notes = held.Aggregate(cases.Bench.Notes, (book, job) => book.Without(job.Id));
        var counted = CountedJobs.Of(notes, _ => 1);
        var scope = DeviceScope.Of(notes, null, notes.Of<DeviceClass>().Single());
        var network = NetworkFromNotes.Build(scope, counted.Learned, notes, []);
        var actions = new ActionsOfNotes(network, notes, counted.Learned);
        var dependent = DependentFindings.Learn(counted.Learned, cases.Causes, KnowledgeFromNotes.Of(notes).Findings, counted.Records.Values);
        return new(
            [.. held.Select(job => Forecast(cases, job, SingleCause.Of(network, EvidenceFromJob.Of(job.Log, network, actions, notes).Evidence)))],
            [.. held.Select(job => new Prediction(dependent.Posterior(job.Log.OfType<Saw>().Select(s => new CheckedFinding(s.Finding, s.Value))), Truth(cases, job)))]);
    }

    private static Prediction Forecast(SoybeanCases cases, Job job, ImmutableDictionary<string, double> chances) =>
        new([.. cases.Causes.Select(c => chances[c])], Truth(cases, job));

    private static int Truth(SoybeanCases cases, Job job) => cases.Causes.IndexOf(job.Causes[0].Fault);
}

/// <param name="Independent">Findings independent given the cause: the bench's ranking.</param>
/// <param name="Dependent">Findings that depend on each other beyond the cause.</param>
internal sealed record FoldPredictions(ImmutableArray<Prediction> Independent, ImmutableArray<Prediction> Dependent);
