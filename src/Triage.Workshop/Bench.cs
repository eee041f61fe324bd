using System.Collections.Immutable;
using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Reasoning.Learning;
using Triage.Search.Queries;
using Triage.Search.Words;
using Triage.Workshop.Answers;
using Triage.Workshop.Knowledge;
using Triage.Workshop.Translating;

namespace Triage.Workshop;

/// <summary>
/// Everything the bench knows at one moment: notes, learned numbers, search, recogniser. Immutable; the live bench swaps
/// whole snapshots, so that no answer is ever half new.
/// </summary>
public sealed class Bench
{
    internal Bench(Notebook notes, Learned learned, ImmutableDictionary<string, JobRecord> records, Recogniser recogniser, Func<SearchQuery, SearchResults> find, ImmutableArray<Problem> problems, BenchSettings settings, long version)
    {
        (Notes, Learned, Records, Recogniser) = (notes, learned, records, recogniser);
        (this.find, Problems, Settings, Version) = (find, problems, settings, version);
    }

    private readonly Func<SearchQuery, SearchResults> find;

    public Notebook Notes { get; }

    public Learned Learned { get; }

    /// <summary>What each counted job told the learner, by job id.</summary>
    public ImmutableDictionary<string, JobRecord> Records { get; }

    public Recogniser Recogniser { get; }

    /// <summary>Everything wrong with the notes of all books.</summary>
    public ImmutableArray<Problem> Problems { get; }

    public BenchSettings Settings { get; }

    /// <summary>Grows by one with every snapshot.</summary>
    public long Version { get; }

    public SearchResults Find(SearchQuery query) => find(query);

    /// <summary>The answer to the state of a job.</summary>
    public Asked AnswerFor(Job job) => new Answering(this).For(job);
}
