using System.Collections.Immutable;
using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Reasoning.Learning;
using Triage.Search.Queries;
using Triage.Search.Words;
using Triage.Workshop.Answers;
using Triage.Workshop.Answers.Wording;
using Triage.Workshop.Knowledge;
using Triage.Workshop.Model;
using Triage.Workshop.Readings;
using Triage.Workshop.Reviews;

namespace Triage.Workshop;

/// <summary>
/// Everything the bench knows at one moment: notes, learned numbers, search, recogniser. Immutable; the live bench swaps
/// whole snapshots, so that no answer is ever half new.
/// </summary>
public sealed class Bench
{
    private readonly SnapshotSearch searcher;
    private readonly Lazy<ImmutableArray<Problem>> problems;

    internal Bench(BenchKnowledge knows, Lazy<Recogniser> understands, SnapshotSearch searcher, Lazy<ImmutableArray<Problem>> problems, long version)
    {
        (Knows, Understands, Version) = (knows, understands, version);
        (this.searcher, this.problems) = (searcher, problems);
    }

    public Notebook Notes => Knows.Notes;

    public BenchSettings Settings => Knows.Settings;

    public Learned Learned => Knows.Learned;

    /// <summary>Everything wrong with the notes of all books, worked out when first asked for.</summary>
    public ImmutableArray<Problem> Problems => [.. Mishaps, .. problems.Value];

    /// <summary>Where the program itself failed, by note.</summary>
    public ImmutableArray<Problem> Mishaps => Knows.Mishaps.All;

    /// <summary>Grows by one with every snapshot.</summary>
    public long Version { get; }

    /// <summary>What answers rest on.</summary>
    internal BenchKnowledge Knows { get; }

    internal CountedJobs Counted => Knows.Counted;

    /// <summary>Made ready when first needed.</summary>
    internal Lazy<Recogniser> Understands { get; }

    internal Recogniser Recogniser => Understands.Value;

    /// <summary>Prior fixes, and every other note.</summary>
    public SearchResults Find(SearchQuery query) => searcher.Search(query);

    /// <summary>The answer to the state of a job, or why there can be none.</summary>
    public Asked AnswerFor(Job job) => new Answering(Knows).For(job);

    /// <summary>What applies to the machine of a job; null when no note knows it.</summary>
    public DeviceScope? ScopeOf(Job job) => Knows.ScopeOf(job);

    /// <summary>What a log entry says, in a repairer's words.</summary>
    public string InWords(Job job, LogEntry entry) => new WordsFor(Notes, ScopeOf(job)?.Access ?? []).Entry(entry);

    /// <summary>What a reading of a job says of its part; null when no note knows the machine.</summary>
    public ReadingVerdict? VerdictOn(Job job, Read entry) =>
        ScopeOf(job) is { } scope ? new ReadingJudge(scope, Notes, Settings, job.Log).Judge(entry, ReadingStretch.Around(entry, job.Log)) : null;

    /// <summary>Which fixes resolved which symptoms.</summary>
    /// <param name="device">Only this device or class; null for all.</param>
    public Review Review(string? device = null) => new Reviewing(Notes).Of(device);

    /// <summary>How good the forecasts of closed jobs were. Takes seconds the first time, nothing while no closed job changes.</summary>
    public ForecastReview Forecasts(IProgress<ForecastProgress>? progress = null, CancellationToken stop = default) => new Forecasting(Knows).Of(progress, stop);

    /// <summary>The same without waiting for it.</summary>
    public Task<ForecastReview> ForecastsInBackground() => new Forecasting(Knows).InBackground();

    /// <summary>What a closed job changed in the knowledge: the same complaint without it and with it.</summary>
    public ImmutableArray<Taught> TaughtBy(Job job) => Taught.By(Knows.Without(job.Id), Knows, job);
}
