namespace Triage.Reasoning.Learning;

/// <summary>
/// What one job adds to the sums, under what is believed of links while it is credited (the E-step of
/// expectation–maximisation; Dempster, Laird and Rubin 1977). Chances of causes that sum to 1 or less are alternatives,
/// one of which was there; chances that sum to more are causes that were there together, independently.
/// </summary>
internal static class Credits
{
    internal static IEnumerable<Credit> Of(JobRecord job, Estimates believed) =>
    [
        .. OfCauses(job, believed.Known),
        .. OfAmbient(job, believed.Known),
        .. OfLinks(job, believed),
        .. OutcomeCredits.Of(job, believed),
    ];

    /// <summary>Whether what is believed matters to what the job adds.</summary>
    internal static bool DependOnBelief(JobRecord job) => Together(job) && (job.Checked.Length > 0 || job.Tried.Length > 0) || job.Tried.Any(tried => tried.OnlyQuiet);

    internal static bool Together(JobRecord job) => job.Causes.Sum(cause => cause.Chance) > 1 + 1e-9;

    static IEnumerable<Credit> OfCauses(JobRecord job, KnowledgeIndex known)
    {
        yield return new(new(Sum.Jobs, TallyKey.Everywhere), job.Weight);
        if (job.Causes.IsEmpty) yield break;
        double[] own = OwnChances(job, known);
        bool[] listed = [.. job.Causes.Select(cause => known.Availability(job.Scope, cause.Fault) > 0)];
        double fresh = Math.Min(1, job.Causes.Where((cause, i) => cause.WasNew || !listed[i]).Sum(cause => cause.Chance));
        foreach (string level in Levels(job))
        {
            yield return new(new(Sum.Explained, level), job.Weight);
            yield return new(new(Sum.New, level), job.Weight * fresh);
            for (int i = 0; i < own.Length; i++)
            {
                if (!listed[i]) continue;
                yield return new(new(Sum.Share, level, job.Causes[i].Fault), job.Weight * own[i]);
                if (!known.Fault(job.Causes[i].Fault)!.Apart) yield return new(new(Sum.Exposure, level, job.Scope), job.Weight * own[i]);
            }
        }
        for (int i = 0; i < job.Levels.Length; i++)
            yield return new(new(Sum.Below, i + 1 < job.Levels.Length ? job.Levels[i + 1] : TallyKey.Everywhere, job.Levels[i]), job.Weight);
        if (Together(job)) yield return new(new(Sum.Double, TallyKey.Everywhere), job.Weight * ChanceOfTwo(own));
    }

    /// <summary>Chance of each cause that it was there and followed from no other: damage that followed is no cause of its own.</summary>
    static double[] OwnChances(JobRecord job, KnowledgeIndex known) => !Together(job)
        ? [.. job.Causes.Select(cause => cause.Chance)]
        : [.. job.Causes.Select(cause => job.Causes
            .Where(other => other.Fault != cause.Fault && known.LeadsTo(other.Fault, cause.Fault) && !known.LeadsTo(cause.Fault, other.Fault))
            .Aggregate(cause.Chance, (chance, other) => chance * (1 - other.Chance)))];

    /// <summary>P(at least two) of independent causes.</summary>
    static double ChanceOfTwo(double[] chances)
    {
        double none = 1, one = 0;
        foreach (double chance in chances)
            (none, one) = (none * (1 - chance), one * (1 - chance) + none * chance);
        return 1 - none - one;
    }

    /// <summary>
    /// A finding tells of its ambient frequency when no cause of the job is known to show it. A cause that is new or that the
    /// notes do not list may show anything, so such a job tells nothing.
    /// </summary>
    static IEnumerable<Credit> OfAmbient(JobRecord job, KnowledgeIndex known)
    {
        if (job.Causes.IsEmpty || job.Causes.Any(cause => cause.WasNew || known.Fault(cause.Fault) is null)) yield break;
        foreach (var (finding, value) in job.Checked)
        {
            if (known.Finding(finding) is null || job.Causes.Any(cause => known.Link(cause.Fault, finding) is not null)) continue;
            yield return new(new(Sum.Ambient, TallyKey.Everywhere, finding, Value: value), job.Weight);
        }
    }

    static IEnumerable<Credit> OfLinks(JobRecord job, Estimates believed)
    {
        foreach (CheckedFinding seen in job.Checked)
        {
            if (believed.Known.Finding(seen.Finding) is not { } finding) continue;
            int value = finding.Values.IndexOf(seen.Value);
            if (value < 0) continue;
            for (int i = 0; i < job.Causes.Length; i++)
            {
                double[] alone = FindingCredit.Alone(job, i, finding, value, believed);
                for (int v = 0; v < alone.Length; v++)
                {
                    if (alone[v] == 0) continue;
                    double amount = job.Weight * job.Causes[i].Chance * alone[v];
                    string fault = job.Causes[i].Fault;
                    foreach (string level in Levels(job))
                        yield return new(new(Sum.Link, level, fault, finding.Id, finding.Values[v]), amount);
                }
            }
        }
    }

    static IEnumerable<string> Levels(JobRecord job) => [TallyKey.Everywhere, .. job.Levels];
}
