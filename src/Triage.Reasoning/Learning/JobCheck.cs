namespace Triage.Reasoning.Learning;

/// <summary>Refuses a job whose numbers cannot be.</summary>
internal static class JobCheck
{
    internal static void Check(JobRecord job, KnowledgeIndex known)
    {
        if (!(job.Weight is >= 0 and <= 1))
            throw new ArgumentException($"Job '{job.Id}' has the weight {job.Weight}; give one of 0 … 1.");
        foreach (JobCause cause in job.Causes)
            if (!(cause.Chance is >= 0 and <= 1))
                throw new ArgumentException($"Job '{job.Id}': the chance of cause '{cause.Fault}' is {cause.Chance}; give one of 0 … 1.");
        if (known.ScopeNumber(job.Scope) is null)
            throw new ArgumentException($"Job '{job.Id}' is of a machine of the scope '{job.Scope}', which the notes do not have; add it to them or leave it out.");
        Once(job, job.Causes.Select(cause => cause.Fault), "cause");
        Once(job, job.Checked.Select(seen => seen.Finding), "finding");
        Once(job, job.Levels, "level");
        if (job.Levels.Contains(TallyKey.Everywhere))
            throw new ArgumentException($"Job '{job.Id}' has a level without a name; leave it out or name it.");
    }

    static void Once(JobRecord job, IEnumerable<string> ids, string kind)
    {
        var seen = new HashSet<string>();
        foreach (string id in ids)
            if (!seen.Add(id)) throw new ArgumentException($"Job '{job.Id}' names the {kind} '{id}' twice; keep one.");
    }
}
