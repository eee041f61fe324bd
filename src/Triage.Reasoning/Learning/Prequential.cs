using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>
/// Forecasts every job before counting it, in canonical order (Dawid 1984): what the learned numbers were worth at the time,
/// beside base rates.
/// </summary>
public static class Prequential
{
    /// <summary>
    /// The classes are the faults of the notes and, last, <see cref="Unlisted"/>. A job's truth is its likeliest cause, unlisted when that was
    /// new or the notes do not know it; jobs without a cause are counted, not scored. Refits when due, so that n jobs cost about 11 n.
    /// </summary>
    /// <param name="knowledge">The notes.</param>
    /// <param name="jobs">Closed jobs, in any order.</param>
    /// <param name="settings">As for learning.</param>
    /// <param name="rank">
    /// P(fault | unit) by fault id under what is learned so far, for a unit without causes and actions; made to sum to 1 here. Faults left out get 0.
    /// </param>
    /// <param name="latest">Only so many of the latest jobs are forecast; the others are only counted, all at once.</param>
    /// <param name="forecasting">Told of each job before it is forecast.</param>
    /// <exception cref="ArgumentException">A note or job that cannot be, or a ranking of nothing: says which.</exception>
    public static ImmutableArray<Forecast> Run(
        Knowledge knowledge, IEnumerable<JobRecord> jobs, LearnerSettings settings, Func<Learned, JobRecord, IReadOnlyDictionary<string, double>> rank,
        int latest = int.MaxValue, Action<JobRecord>? forecasting = null)
    {
        ImmutableArray<string> faults = [.. knowledge.Faults.Select(fault => fault.Id)];
        JobRecord[] ordered = [.. jobs.OrderBy(job => job.Closed).ThenBy(job => job.Id, StringComparer.Ordinal)];
        int first = Math.Max(0, ordered.Length - latest);
        Learned learned = Learner.Learn(knowledge, ordered[..first], settings);
        var forecasts = ImmutableArray.CreateBuilder<Forecast>();
        foreach (JobRecord job in ordered[first..])
        {
            forecasting?.Invoke(job);
            if (!job.Causes.IsEmpty && job.Weight > 0) forecasts.Add(Of(learned, job, faults, rank));
            learned = learned.With(job);
            if (learned.RefitDue) learned = learned.Refit();
        }
        return forecasts.ToImmutable();
    }

    /// <summary>Id of the class of causes that no note lists.</summary>
    public const string Unlisted = "unlisted";

    static Forecast Of(Learned learned, JobRecord job, ImmutableArray<string> faults, Func<Learned, JobRecord, IReadOnlyDictionary<string, double>> rank)
    {
        var ranked = rank(learned, job with { Causes = [], Tried = [] });
        double[] chances = [.. faults.Select(fault => ranked.GetValueOrDefault(fault)), ranked.GetValueOrDefault(Unlisted)];
        double sum = chances.Sum();
        if (!(sum > 0 && double.IsFinite(sum)) || chances.Any(chance => chance < 0))
            throw new ArgumentException($"The ranking for job '{job.Id}' must give chances of 0 or more, not all 0; they sum to {sum}.");
        double unlisted = learned.UnlistedShare([]).Mean;
        var shares = learned.Shares(KnownScope.Of(KnownScope.Anything, faults), []);
        double[] rates = [.. faults.Select(fault => shares[fault].Mean * (1 - unlisted)), unlisted];
        int truth = Truth(job, faults);
        return new(job.Id, new([.. chances.Select(chance => chance / sum)], truth), new(rates, truth));
    }

    static int Truth(JobRecord job, ImmutableArray<string> faults)
    {
        JobCause cause = job.Causes.MaxBy(c => c.Chance)!;
        int index = cause.WasNew ? -1 : faults.IndexOf(cause.Fault);
        return index < 0 ? faults.Length : index;
    }
}

/// <summary>What was forecast of one job before it was counted; score lists of them with <see cref="PredictionScore.Of"/>.</summary>
/// <param name="Job">Its id.</param>
/// <param name="Ranked">By the ranking.</param>
/// <param name="BaseRates">By shares of causes alone, on all devices alike.</param>
public sealed record Forecast(string Job, Prediction Ranked, Prediction BaseRates);
