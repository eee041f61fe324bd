using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Reasoning.Learning;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Model;

/// <summary>
/// Learned numbers, and what each closed job told them. Immutable. A job closed, changed or gone costs the same however many there are. When
/// one changes among those that the epoch was fitted to, or there are a tenth more, the epoch is to be fitted anew, which costs more with
/// more jobs and can wait: then the numbers are those of learning from nothing.
/// </summary>
/// <param name="Records">What each counted job tells, by job id.</param>
/// <param name="InOrder">The same in the order in which epochs are fitted.</param>
internal sealed record CountedJobs(Learned Learned, ImmutableDictionary<string, JobRecord> Records, ImmutableSortedSet<JobRecord> InOrder)
{
    private static readonly IComparer<JobRecord> Canonical = Comparer<JobRecord>.Create((a, b) =>
        a.Closed.CompareTo(b.Closed) is var byDate and not 0 ? byDate : string.CompareOrdinal(a.Id, b.Id));

    /// <summary>The epoch is not the one that learning from nothing would fit.</summary>
    public bool RefitDue { get; private init; }

    /// <summary>The same jobs under the epoch that is theirs.</summary>
    public CountedJobs Refitted() => RefitDue ? this with { Learned = Learned.Refit(), RefitDue = false } : this;

    /// <summary>Learns everything anew: when the knowledge notes changed, or at the start.</summary>
    /// <param name="fitted">What the same notes were fitted to before, when that is known.</param>
    /// <param name="mishaps">A job that the program fails at is not counted, and named there.</param>
    public static CountedJobs Of(Notebook notes, Func<Job, double> trust, Mishaps mishaps, Fit? fitted = null)
    {
        var records = notes.Jobs.Select(job => Record(job, notes, trust, mishaps)).OfType<JobRecord>().ToList();
        return new(
            Learner.Learn(KnowledgeFromNotes.Of(notes), records, LearnerSettings.Default, fitted),
            records.ToImmutableDictionary(r => r.Id, StringComparer.Ordinal),
            records.ToImmutableSortedSet(Canonical));
    }

    /// <summary>The jobs with these ids put in place of what they told before: new, closed, edited, opened again, gone.</summary>
    /// <param name="notes">The notes as they are now.</param>
    public CountedJobs Recounted(IEnumerable<string> ids, Notebook notes, Func<Job, double> trust, Mishaps mishaps)
    {
        var (counted, refit) = (this, RefitDue);
        foreach (var id in ids)
        {
            var before = counted.Records.GetValueOrDefault(id);
            var after = notes.Find<Job>(id) is { } job && job.Id == id ? Record(job, notes, trust, mishaps) : null;
            if (Same(before, after))
                continue;
            refit |= counted.WasFittedTo(before);
            counted = counted.Without(id);
            counted = after is null ? counted : counted.With(after);
            refit |= counted.WasFittedTo(after);
        }

        return counted with { RefitDue = refit || counted.Learned.RefitDue };
    }

    /// <summary>One job less, under the same epoch.</summary>
    public CountedJobs Without(string id) => Records.TryGetValue(id, out var record)
        ? new(Learned.Without(record), Records.Remove(id), InOrder.Remove(record))
        : this;

    private CountedJobs With(JobRecord record) =>
        new(Learned.With(record), Records.Add(record.Id, record), InOrder.Add(record));

    private bool WasFittedTo(JobRecord? record) => record is not null && InOrder.IndexOf(record) < Learned.Epoch.FittedTo;

    private static JobRecord? Record(Job job, Notebook notes, Func<Job, double> trust, Mishaps mishaps) =>
        mishaps.Or(job.Place.Path, "counting this job", () => Record(job, notes, trust(job)), _ => null);

    /// <summary>A job that names only causes no note lists tells nothing; the note check says so. A cause named twice counts once.</summary>
    private static JobRecord? Record(Job job, Notebook notes, double trust)
    {
        if (RecordFromJob.Of(job, notes, trust) is not { } record)
            return null;
        ImmutableArray<JobCause> listed =
        [
            .. record.Causes
                .Where(c => c.Fault == SpecialFaults.NothingWrong || notes.Find<Fault>(c.Fault) is not null)
                .OrderByDescending(c => c.Chance)
                .DistinctBy(c => c.Fault),
        ];
        return listed.IsEmpty ? null : record with { Causes = listed };
    }

    private static bool Same(JobRecord? a, JobRecord? b) =>
        a is null || b is null ? a is null && b is null
        : a.Closed == b.Closed && a.Weight.Equals(b.Weight) && a.Scope == b.Scope && a.Levels.SequenceEqual(b.Levels) && a.Causes.SequenceEqual(b.Causes)
            && a.Checked.SequenceEqual(b.Checked) && a.Tried.SequenceEqual(b.Tried);
}
