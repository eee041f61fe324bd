namespace Triage.Reasoning.Learning;

/// <summary>What the learner believes before the first job. The defaults are common practice, no source.</summary>
public sealed record LearnerSettings
{
    public static LearnerSettings Default { get; } = new();

    /// <summary>Medians of the log-normal priors on the pseudo-jobs of each step.</summary>
    public Pooling Pooling { get; init; } = new();

    /// <summary>Standard deviation of ln κ around those medians; 0 keeps the medians whatever the jobs say.</summary>
    public double PoolingSpread { get; init; } = 1.5;

    /// <summary>Share of jobs with two independent causes, with the pseudo-jobs behind it.</summary>
    public Estimate DoubleFaults { get; init; } = new(0.05, 20);

    /// <summary>Share of jobs whose cause is new, with the pseudo-jobs behind it.</summary>
    public Estimate Unlisted { get; init; } = new(0.05, 20);

    /// <summary>Mean days until what was not cured comes back, with the comebacks behind it.</summary>
    public Estimate ComebackDays { get; init; } = new(60, 4);

    /// <summary>Rounds of expectation–maximisation over jobs with several causes, when an epoch is fitted.</summary>
    public int CreditRounds { get; init; } = 8;
}
