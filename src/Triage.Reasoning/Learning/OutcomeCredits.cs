namespace Triage.Reasoning.Learning;

/// <summary>
/// What the outcomes of resets, swaps and fixes say of each cause. Only the first seen outcome of an action counts, since
/// repeats depend on it. "Works" needs every cause cleared; a failure is shared by responsibility.
/// </summary>
internal static class OutcomeCredits
{
    internal static IEnumerable<Credit> Of(JobRecord job, Estimates believed)
    {
        foreach (TriedAction tried in job.Tried.Where(action => action.Works is not null).DistinctBy(action => action.Action))
        {
            foreach (Credit credit in Shared(job, Sum.Works, tried.Action, tried.Works!.Value, fault => believed.Works(tried.Action, fault)?.Mean ?? 0))
                yield return credit;
            if (tried.OnlyQuiet)
                foreach (Credit credit in Quiet(job, tried, believed)) yield return credit;
            if (tried is not { Works: true, Held: { } held }) continue;
            foreach (Credit credit in Shared(job, Sum.Holds, tried.Action, held, fault => believed.Holds(tried.Action, fault)?.Mean ?? 1))
                yield return credit;
        }
    }

    /// <summary>Quiet means that every cause is: each counts for itself.</summary>
    static IEnumerable<Credit> Quiet(JobRecord job, TriedAction tried, Estimates believed) =>
        from cause in job.Causes
        let holds = believed.Holds(tried.Action, cause.Fault)?.Mean ?? 1
        select new Credit(new(Sum.Holds, TallyKey.Everywhere, tried.Action, cause.Fault, TallyKey.Yes),
            job.Weight * cause.Chance * believed.Comebacks.Worth(holds, tried.QuietDays));

    static IEnumerable<Credit> Shared(JobRecord job, Sum sum, string action, bool succeeded, Func<string, double> believed)
    {
        for (int i = 0; i < job.Causes.Length; i++)
        {
            double success = succeeded ? 1 : SuccessDespiteFailure(job, i, believed);
            double weight = job.Weight * job.Causes[i].Chance;
            string fault = job.Causes[i].Fault;
            yield return new(new(sum, TallyKey.Everywhere, action, fault, TallyKey.Yes), weight * success);
            yield return new(new(sum, TallyKey.Everywhere, action, fault, TallyKey.No), weight * (1 - success));
        }
    }

    /// <summary>P(this cause was cleared | not all were): w (1 − Π others) / (1 − w Π others).</summary>
    static double SuccessDespiteFailure(JobRecord job, int cause, Func<string, double> believed)
    {
        if (!Credits.Together(job)) return 0;
        double others = job.Causes.Where((_, j) => j != cause).Aggregate(1.0, (product, c) => product * (1 - c.Chance + c.Chance * believed(c.Fault)));
        double own = believed(job.Causes[cause].Fault);
        double failure = 1 - own * others;
        return failure > 0 ? own * (1 - others) / failure : 0;
    }
}
