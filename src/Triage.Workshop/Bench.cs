using System.Collections.Concurrent;
using System.Collections.Immutable;
using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Reasoning.Learning;
using Triage.Search.Queries;
using Triage.Search.Words;
using Triage.Workshop.Answers;
using Triage.Workshop.Knowledge;
using Triage.Workshop.Readings;
using Triage.Workshop.Steps;
using Triage.Workshop.Store;

namespace Triage.Workshop;

/// <summary>
/// Everything the bench knows at one moment: notes, learned numbers, search, recogniser. Immutable; the live bench swaps
/// whole snapshots, so that no answer is ever half new.
/// </summary>
public sealed class Bench
{
    private readonly SnapshotSearch searcher;
    private readonly Lazy<ImmutableArray<Problem>> problems;

    // what no complaint changes is worked out once a snapshot
    private readonly ConcurrentDictionary<(string? Device, string Class), DeviceScope> scopes = new();
    private readonly ConcurrentDictionary<string, CountedJobs> lacking = new(StringComparer.Ordinal);

    internal Bench(Notebook notes, CountedJobs counted, Lazy<Recogniser> understands, SnapshotSearch searcher, Lazy<ImmutableArray<Problem>> problems, BenchSettings settings, long version)
    {
        (Notes, Counted, Understands, Settings, Version) = (notes, counted, understands, settings, version);
        (this.searcher, this.problems) = (searcher, problems);
    }

    public Notebook Notes { get; }

    public BenchSettings Settings { get; }

    public Learned Learned => Counted.Learned;

    /// <summary>Everything wrong with the notes of all books, worked out when first asked for.</summary>
    public ImmutableArray<Problem> Problems => problems.Value;

    /// <summary>Grows by one with every snapshot.</summary>
    public long Version { get; }

    internal CountedJobs Counted { get; }

    /// <summary>Made ready when first needed.</summary>
    internal Lazy<Recogniser> Understands { get; }

    internal Recogniser Recogniser => Understands.Value;

    /// <summary>Prior fixes, and every other note.</summary>
    public SearchResults Find(SearchQuery query) => searcher.Search(query);

    /// <summary>The answer to the state of a job, or why there can be none.</summary>
    public Asked AnswerFor(Job job) => new Answering(this).For(job);

    /// <summary>What applies to the machine of a job; null when no note knows it.</summary>
    public DeviceScope? ScopeOf(Job job) => new Answering(this).ScopeOf(job);

    /// <summary>What a log entry says, in a repairer's words.</summary>
    public string InWords(Job job, LogEntry entry) => new WordsFor(Notes, ScopeOf(job)?.Access ?? []).Entry(entry);

    /// <summary>What a reading of a job says of its part; null when no note knows the machine.</summary>
    public ReadingVerdict? VerdictOn(Job job, Read entry) =>
        ScopeOf(job) is { } scope ? new ReadingJudge(scope, Notes, Settings, job.Log).Judge(entry, ReadingStretch.Around(entry, job.Log)) : null;

    /// <summary>Which fixes resolved which symptoms.</summary>
    /// <param name="device">Only this device or class; null for all.</param>
    public Review Review(string? device = null) => new Reviewing(Notes).Of(device);

    /// <summary>How good the forecasts of closed jobs were. Takes seconds the first time, nothing while no closed job changes.</summary>
    public ForecastReview Forecasts(IProgress<ForecastProgress>? progress = null, CancellationToken stop = default) => new Forecasting(this).Of(progress, stop);

    /// <summary>The same without waiting for it.</summary>
    public Task<ForecastReview> ForecastsInBackground() => new Forecasting(this).InBackground();

    /// <summary>What a closed job changed in the knowledge: the same complaint without it and with it.</summary>
    public ImmutableArray<Taught> TaughtBy(Job job) => Closing.Taught(WithoutJob(job.Id), this, job);

    /// <summary>What applies to a device, or to any of a class.</summary>
    internal DeviceScope ScopeOf(Device? device, DeviceClass kind) => scopes.GetOrAdd((device?.Id, kind.Id), _ => DeviceScope.Of(Notes, device, kind));

    /// <summary>The learned numbers with one closed job left out.</summary>
    internal CountedJobs CountedWithout(string id) => lacking.GetOrAdd(id, Counted.Without);

    /// <summary>The same question with one closed job left out of the learned numbers.</summary>
    internal Bench WithoutJob(string id) => new(Notes, CountedWithout(id), Understands, searcher, problems, Settings, Version);
}
