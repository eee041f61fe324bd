namespace Triage.Reasoning.Learning;

/// <summary>
/// What is fitted now and then instead of at every job: the pooling, how soon faults come back, which findings others depend on, and what is
/// believed of links while jobs with several causes are credited. Under one epoch, learned numbers are a pure function of the set of jobs.
/// </summary>
public sealed class Epoch
{
    internal Epoch(int fittedTo, Estimates believed, Dependence dependence) => (FittedTo, Believed, Dependence) = (fittedTo, believed, dependence);

    /// <summary>It was fitted to this many jobs, the first in canonical order (closing date, id).</summary>
    public int FittedTo { get; }

    public Pooling Pooling => Believed.Pooling;

    /// <summary>How soon comes back what was not cured.</summary>
    public Comebacks Comebacks => Believed.Comebacks;

    /// <summary>How far findings depend on each other beyond the cause.</summary>
    public Dependence Dependence { get; }

    /// <summary>What need not be fitted again to the same notes and jobs.</summary>
    public Fit Fit => new(Pooling, Dependence);

    internal Estimates Believed { get; }

    /// <summary>What a job adds to the sums.</summary>
    internal IEnumerable<Credit> CreditsOf(JobRecord job) => Credits.Of(job, Believed).Concat(PairCredits.Of(job, Dependence.Parents, Believed.Known));

    /// <summary>The largest ⌈1.1^k⌉ that is at most the number of jobs; 0 for none.</summary>
    public static int Due(int jobs)
    {
        int due = 0;
        double power = 1;
        while (Math.Ceiling(power) <= jobs)
        {
            due = (int)Math.Ceiling(power);
            power *= 1.1;
        }
        return due;
    }
}
