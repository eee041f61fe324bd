namespace Triage.Reasoning.Learning;

/// <summary>Learns priors, links, ambient frequencies and outcomes of actions from closed jobs.</summary>
public static class Learner
{
    /// <summary>
    /// Fits the epoch to the first ⌈1.1^k⌉ jobs in canonical order and counts all of them. The order given does not matter.
    /// </summary>
    /// <param name="fitted">What these very notes and jobs were fitted to before, when that is known.</param>
    /// <exception cref="ArgumentException">A note or job that cannot be: says which, and what to do.</exception>
    public static Learned Learn(Knowledge knowledge, IEnumerable<JobRecord> jobs, LearnerSettings settings, Fit? fitted = null)
    {
        var known = new KnowledgeIndex(knowledge);
        JobRecord[] canonical = [.. jobs.OrderBy(job => job.Closed).ThenBy(job => job.Id, StringComparer.Ordinal)];
        foreach (JobRecord job in canonical) JobCheck.Check(job, known);
        Epoch epoch = Fit(known, canonical.AsSpan(0, Epoch.Due(canonical.Length)).ToArray(), settings, fitted);
        return Learned.Count(known, canonical, epoch, settings);
    }

    /// <summary>
    /// Jobs whose credit depends on what is believed are credited again in every round of expectation–maximisation;
    /// the others are counted once.
    /// </summary>
    static Epoch Fit(KnowledgeIndex known, JobRecord[] jobs, LearnerSettings settings, Fit? fitted)
    {
        Comebacks comebacks = Comebacks.Fit(jobs, settings.ComebackDays);
        Estimates Believing(Tally tally) => new(known, tally, settings.Pooling, comebacks, settings);
        Estimates notes = Believing(Tally.Empty);
        ILookup<bool, JobRecord> shared = jobs.ToLookup(Credits.DependOnBelief);
        Tally plain = Tally.Empty.PlusMany(shared[false].SelectMany(job => Credits.Of(job, notes)));
        Estimates believed = Believing(plain);
        for (int round = 0; round < settings.CreditRounds && shared[true].Any(); round++)
        {
            // comebacks alone would make every repair look hopeless
            Estimates before = round == 0 ? notes : believed;
            believed = Believing(plain.PlusMany(shared[true].SelectMany(job => Credits.Of(job, before))));
        }
        Pooling pooling = fitted?.Pooling ?? PoolingFit.Fit(believed, jobs, settings);
        Estimates pooled = new(known, believed.Tally, pooling, comebacks, settings);
        return new(jobs.Length, pooled, fitted?.Dependence ?? DependenceFit.Best(pooled, jobs));
    }
}
