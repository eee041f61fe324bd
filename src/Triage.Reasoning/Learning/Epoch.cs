namespace Triage.Reasoning.Learning;

/// <summary>
/// What is fitted now and then instead of at every job: the pooling, how soon faults come back, and what is believed of links while jobs with several
/// causes are credited. Under one epoch, learned numbers are a pure function of the set of jobs.
/// </summary>
public sealed class Epoch
{
    internal Epoch(int fittedTo, Estimates believed) => (FittedTo, Believed) = (fittedTo, believed);

    /// <summary>It was fitted to this many jobs, the first in canonical order (closing date, id).</summary>
    public int FittedTo { get; }

    public Pooling Pooling => Believed.Pooling;

    /// <summary>How soon comes back what was not cured.</summary>
    public Comebacks Comebacks => Believed.Comebacks;

    internal Estimates Believed { get; }

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
