using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Reasoning.Learning;
using Triage.Workshop.Translating;

namespace Triage.Workshop.Knowledge;

/// <summary>Learned numbers, and what each closed job told them. Immutable; one job more or less costs the same however many there are.</summary>
internal sealed record CountedJobs(Learned Learned, ImmutableDictionary<string, JobRecord> Records)
{
    /// <summary>Learns everything anew: when the knowledge notes changed, or at the start.</summary>
    public static CountedJobs Of(Notebook notes, Func<Job, double> trust)
    {
        var records = notes.Jobs.Select(job => Record(job, notes, trust(job))).OfType<JobRecord>().ToList();
        return new(
            Learner.Learn(KnowledgeFromNotes.Of(notes), records, LearnerSettings.Default),
            records.ToImmutableDictionary(r => r.Id, StringComparer.Ordinal));
    }

    /// <summary>Puts a job in place of what it told before: new, closed, edited, or opened again.</summary>
    public CountedJobs With(Job job, Notebook notes, double trust)
    {
        var without = Without(job.Id);
        var counted = Record(job, notes, trust) is { } record
            ? new CountedJobs(without.Learned.With(record), without.Records.Add(record.Id, record))
            : without;
        return counted.Learned.RefitDue ? counted with { Learned = counted.Learned.Refit() } : counted;
    }

    public CountedJobs Without(string id) =>
        Records.TryGetValue(id, out var record) ? new(Learned.Without(record), Records.Remove(id)) : this;

    /// <summary>A job that names only causes no note lists tells nothing; the note check says so.</summary>
    private static JobRecord? Record(Job job, Notebook notes, double trust)
    {
        if (RecordFromJob.Of(job, notes, trust) is not { } record)
            return null;
        ImmutableArray<JobCause> listed = [.. record.Causes.Where(c => c.Fault == SpecialFaults.NothingWrong || notes.Find<Fault>(c.Fault) is not null)];
        return listed.IsEmpty ? null : record with { Causes = listed };
    }
}
