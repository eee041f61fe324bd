using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Triage.Notes.Kinds;
using Triage.Reasoning.Learning;
using Triage.Search.Causes;
using Triage.Workshop.Answers;
using Triage.Workshop.Chances;
using Triage.Workshop.Jobs;
using Triage.Workshop.Knowledge;
using Triage.Workshop.Model;

namespace Triage.Workshop.Reviews;

/// <summary>Forecasts closed jobs one after another, as the bench would have ranked them at the time, beside base rates and Microsoft.ML.</summary>
internal sealed class Forecasting(BenchKnowledge known)
{
    /// <summary>Jobs forecast at most: some ten seconds.</summary>
    private const int Latest = 500;

    private static readonly ConditionalWeakTable<Learned, Task<ForecastReview>> Reviewed = [];

    private readonly Answering answering = new(known);

    /// <summary>Worked out once for what was learned.</summary>
    public ForecastReview Of(IProgress<ForecastProgress>? progress, CancellationToken stop)
    {
        if (Reviewed.TryGetValue(known.Learned, out var done) && done.IsCompletedSuccessfully)
            return done.Result;
        var review = Work(progress, stop);
        Reviewed.AddOrUpdate(known.Learned, Task.FromResult(review));
        return review;
    }

    /// <summary>Begins when first asked for.</summary>
    public Task<ForecastReview> InBackground() => Reviewed.GetValue(known.Learned, _ => Task.Run(() => Work(null, CancellationToken.None)));

    private ForecastReview Work(IProgress<ForecastProgress>? progress, CancellationToken stop)
    {
        var knowledge = KnowledgeFromNotes.Of(known.Notes);
        var (done, all) = (0, Math.Min(Latest, known.Counted.Records.Count));
        var forecasts = Prequential.Run(knowledge, known.Counted.Records.Values, LearnerSettings.Default, Rank, Latest, _ =>
        {
            stop.ThrowIfCancellationRequested();
            progress?.Report(new(done++, all));
        });
        if (forecasts.IsEmpty)
            return new() { Jobs = 0, Scores = [], Reliability = [], Remarks = [] };
        var against = new DiscriminativeForecasts([.. knowledge.Faults.Select(f => f.Id), Prequential.Unlisted], [.. known.Counted.InOrder], forecasts, stop);
        ImmutableArray<ForecasterScore> scores =
        [
            new("the bench", PredictionScore.Of(forecasts.Select(f => f.Ranked))),
            new("base rates", PredictionScore.Of(forecasts.Select(f => f.BaseRates))),
            new("maximum entropy (Microsoft.ML)", PredictionScore.Of(against.By(CauseTrainer.MaximumEntropy))),
            new("averaged perceptrons (Microsoft.ML)", PredictionScore.Of(against.By(CauseTrainer.AveragedPerceptron))),
        ];
        return new() { Jobs = forecasts.Length, Scores = scores, Reliability = ReliabilityBin.Of(forecasts.Select(f => f.Ranked)), Remarks = [.. ForecastsInWords.Of(scores)] };
    }

    /// <summary>By fault id; the unlisted fault goes by the same name there.</summary>
    private Dictionary<string, double> Rank(Learned learned, JobRecord unit) =>
        known.Mishaps.Or(known.Notes.Find<Job>(unit.Id)!.Place.Path, "forecasting this job", () => Ranked(learned, unit), _ => BaseRates(learned, unit));

    private Dictionary<string, double> Ranked(Learned learned, JobRecord unit)
    {
        var job = known.Notes.Find<Job>(unit.Id)!;
        var asItCameIn = job with { Log = [.. job.Log.AsItCameIn()], Outcome = null };
        var rates = BaseRates(learned, unit);
        return known.ScopeOf(job) is { } scope && Reason(asItCameIn, scope, learned) is { Posterior.Contradiction: false } reasoned
            ? WithWhatNoNoteListsHere(reasoned.Network.Faults.Keys.ToDictionary(f => f, reasoned.AtFirst, StringComparer.Ordinal), rates)
            : rates;
    }

    /// <summary>A fault that the notes list for other machines only is an unlisted one on this: such faults have their part of its chance, by their shares.</summary>
    private static Dictionary<string, double> WithWhatNoNoteListsHere(Dictionary<string, double> chances, Dictionary<string, double> rates)
    {
        var unlisted = chances.GetValueOrDefault(SpecialFaults.Unlisted);
        var elsewhere = rates.Where(r => r.Key == SpecialFaults.Unlisted || !chances.ContainsKey(r.Key)).ToList();
        var sum = elsewhere.Sum(r => r.Value);
        foreach (var (fault, rate) in elsewhere)
            chances[fault] = unlisted * rate / sum;
        return chances;
    }

    /// <summary>Null when too much is abnormal at once to be told from impossible.</summary>
    private Reasoned? Reason(Job job, DeviceScope scope, Learned learned)
    {
        try
        {
            return answering.Reason(job, scope, learned);
        }
        catch (ArithmeticException)
        {
            return null;
        }
    }

    /// <summary>Of a machine that no note knows only its causes in general are known.</summary>
    private Dictionary<string, double> BaseRates(Learned learned, JobRecord unit)
    {
        var anything = KnownScope.Of(KnownScope.Anything, [.. known.Notes.Of<Fault>().Select(f => f.Id), SpecialFaults.NothingWrong]);
        var unlisted = learned.UnlistedShare(unit.Levels).Mean;
        var rates = learned.Shares(anything, unit.Levels).ToDictionary(s => s.Key, s => s.Value.Mean * (1 - unlisted), StringComparer.Ordinal);
        rates[SpecialFaults.Unlisted] = unlisted;
        return rates;
    }
}
