using System.Collections.Concurrent;
using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>
/// Learned numbers: an immutable value, made by <see cref="Learner.Learn"/> and moved on by <see cref="With"/> and <see cref="Without"/>,
/// at a cost that does not grow with the number of jobs. Levels run from the most special to the most general (device,
/// device class); above them stands everything.
/// </summary>
public sealed class Learned
{
    readonly Estimates estimates;
    readonly LearnerSettings settings;
    readonly ImmutableDictionary<string, JobRecord> jobs;
    readonly ConcurrentDictionary<string, DependentFindings> dependent = new();

    Learned(Estimates estimates, Epoch epoch, LearnerSettings settings, ImmutableDictionary<string, JobRecord> jobs) =>
        (this.estimates, Epoch, this.settings, this.jobs) = (estimates, epoch, settings, jobs);

    /// <summary>What was fitted, and to how many jobs.</summary>
    public Epoch Epoch { get; }

    /// <summary>Jobs counted, by weight.</summary>
    public double JobsCounted => estimates.Tally[new(Sum.Jobs, TallyKey.Everywhere)];

    /// <summary>True when there are enough more (or fewer) jobs that the epoch should be fitted anew with <see cref="Refit"/>.</summary>
    public bool RefitDue => Epoch.Due(jobs.Count) != Epoch.FittedTo;

    /// <summary>Share of causes on machines at these levels, among all faults that the notes list.</summary>
    public Estimate Share(string fault, ImmutableArray<string> levels) => estimates.Known.Fault(fault) is null
        ? throw new ArgumentException($"The notes list no fault '{fault}'; add it to them first.")
        : Shares(estimates.Known.Scope(KnownScope.Anything), levels)[fault];

    /// <summary>Share of each fault among the listed causes of machines at these levels that can have those of a scope; they sum to 1.</summary>
    /// <exception cref="ArgumentException">The scope names a fault that the notes do not list, or an impossible chance.</exception>
    public ImmutableDictionary<string, Estimate> Shares(KnownScope scope, ImmutableArray<string> levels) => estimates.Shares.Of(scope, levels);

    /// <summary>Smoothed share of jobs whose cause was new when they closed, or is not listed for such a machine.</summary>
    public Estimate UnlistedShare(ImmutableArray<string> levels) => estimates.Shares.Unlisted(levels);

    /// <summary>
    /// Ordered findings: P(value that this cause by itself produces), without the leak. Nominal ones: P(value | only this cause).
    /// Null when neither a note nor a job links the two.
    /// </summary>
    public Distribution? Link(string fault, string finding, ImmutableArray<string> levels) => estimates.Link(fault, finding, levels);

    /// <summary>P(value | only this cause), leak included, for ordered and nominal findings alike; null when nothing links the two.</summary>
    public Distribution? Seen(string fault, string finding, ImmutableArray<string> levels) => estimates.Seen(fault, finding, levels);

    /// <summary>P(value | no linked cause).</summary>
    public Distribution Ambient(string finding) => estimates.Ambient(finding);

    /// <summary>Findings as they depend on each other beyond the cause; null while jobs do not show that this forecasts better than independence.</summary>
    public DependentFindings? Dependent(ImmutableArray<string> levels) => Epoch.Dependence.Parents.IsEmpty
        ? null
        : dependent.GetOrAdd(string.Join('\n', levels), _ => new(estimates, Epoch.Dependence, levels));

    /// <summary>Chance that the action silences the fault right after; null when its note does not name the fault.</summary>
    public Estimate? Works(string action, string fault) => estimates.Works(action, fault);

    /// <summary>Chance that it stays silent, given that it went silent; null when its note does not name the fault.</summary>
    public Estimate? Holds(string action, string fault) => estimates.Holds(action, fault);

    /// <summary>
    /// The factor s of π = s · share. With many small independent priors the number of faults is Poisson with mean s, so that
    /// among faulty units P(two or more) = 1 − s / (eˢ − 1); s solves it for the smoothed share of jobs with two causes.
    /// </summary>
    public double IndependentFaults
    {
        get
        {
            double prior = settings.DoubleFaults.Weight;
            double twice = estimates.Tally[new(Sum.Double, TallyKey.Everywhere)] + prior * settings.DoubleFaults.Mean;
            double all = estimates.Tally[new(Sum.Explained, TallyKey.Everywhere)] + prior;
            return IndependentCauses.Factor(twice / all);
        }
    }

    /// <summary>Links whose cause, alone, shows less than the leak does: noisy-MAX cannot say that, a better note can.</summary>
    public ImmutableArray<LinkBelowLeak> BelowLeak(ImmutableArray<string> levels) => LinkBelowLeak.Among(estimates, levels);

    /// <summary>What jobs say of findings or values that the notes do not know; it counts nothing until they do.</summary>
    public ImmutableArray<NotCounted> NotCounted =>
    [
        .. from job in jobs.Values
           from seen in job.Checked
           where estimates.Known.Finding(seen.Finding)?.Values.Contains(seen.Value) != true
           orderby job.Closed, job.Id
           select new NotCounted(job.Id, seen.Finding, seen.Value),
    ];

    /// <summary>Counts one more job.</summary>
    public Learned With(JobRecord job)
    {
        JobCheck.Check(job, estimates.Known);
        if (jobs.ContainsKey(job.Id)) throw new ArgumentException($"Job '{job.Id}' is counted already; take it out first.");
        return Moved(estimates.Tally.Plus(Epoch.CreditsOf(job)), jobs.Add(job.Id, job));
    }

    /// <summary>Takes out the job of this id, as it was counted.</summary>
    public Learned Without(JobRecord job)
    {
        if (!jobs.TryGetValue(job.Id, out JobRecord? counted)) throw new ArgumentException($"Job '{job.Id}' is not among those counted.");
        return Moved(estimates.Tally.Minus(Epoch.CreditsOf(counted)), jobs.Remove(job.Id));
    }

    /// <summary>Learns anew from the jobs counted, with a new epoch.</summary>
    public Learned Refit() => Learner.Learn(estimates.Known.Knowledge, jobs.Values, settings);

    /// <summary>Counts other jobs from nothing, under this epoch.</summary>
    public Learned Recount(IEnumerable<JobRecord> others) => Count(estimates.Known, [.. others], Epoch, settings);

    internal static Learned Count(KnowledgeIndex known, IReadOnlyList<JobRecord> jobs, Epoch epoch, LearnerSettings settings)
    {
        var byId = ImmutableDictionary.CreateBuilder<string, JobRecord>();
        foreach (JobRecord job in jobs)
        {
            JobCheck.Check(job, known);
            if (!byId.TryAdd(job.Id, job)) throw new ArgumentException($"Two jobs are called '{job.Id}'; ids must differ.");
        }
        Tally tally = Tally.Empty.PlusMany(jobs.SelectMany(epoch.CreditsOf));
        return new(new(known, tally, epoch.Pooling, epoch.Comebacks, settings), epoch, settings, byId.ToImmutable());
    }

    Learned Moved(Tally tally, ImmutableDictionary<string, JobRecord> moved) =>
        new(new(estimates.Known, tally, Epoch.Pooling, Epoch.Comebacks, settings), Epoch, settings, moved);
}

/// <summary>A value that was seen but that no note knows.</summary>
public readonly record struct NotCounted(string Job, string Finding, string Value);
