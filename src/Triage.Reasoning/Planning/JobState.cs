using System.Text;

namespace Triage.Reasoning.Planning;

/// <summary>Where a job stands: what is believed, what is done, what is open. Option and step numbers are those of the model.</summary>
internal sealed class JobState(double[] belief, bool[] done, bool[] open, JobStep? last)
{
    /// <summary>Weight of each fault set, summing to 1.</summary>
    public double[] Belief { get; } = belief;

    public bool[] Done { get; } = done;

    public bool[] Open { get; } = open;

    public JobStep? Last { get; } = last;

    /// <summary>
    /// Equal for histories that lead to the same belief. Fixes commute with fixes and looks with looks; a look commutes with a fix
    /// only where no fix can leave a part of several faults behind.
    /// </summary>
    public string Key(bool everythingCommutes)
    {
        var runs = new List<List<(int Number, int Outcome)>>();
        var outcomeOfFix = JobStep.StillFaulty;
        var kind = false;
        for (var step = Last; step is not null; step = step.Before)
        {
            var isFix = step.Outcome == outcomeOfFix;
            if (runs.Count == 0 || (!everythingCommutes && kind != isFix))
            {
                runs.Add([]);
            }

            kind = isFix;
            runs[^1].Add((step.Number, step.Outcome));
        }

        var key = new StringBuilder();
        foreach (var run in runs)
        {
            run.Sort();
            run.ForEach(s => key.Append((char)s.Number).Append((char)(s.Outcome + 1)));
        }

        return key.ToString();
    }
}

/// <summary>A step that was done in the plan, by the number of its fix or <see cref="Look"/>, with the number of what was seen.</summary>
internal sealed record JobStep(int Number, int Outcome, JobStep? Before)
{
    /// <summary>The one outcome of a fix after which the job goes on.</summary>
    public const int StillFaulty = -1;
}

/// <summary>What can come of an option; no state when the job is over.</summary>
internal readonly record struct Outcome(double Probability, int Value, JobState? Next)
{
    public const int Works = -2;
}

/// <summary>Expected cost from a state on, and the option that it begins with.</summary>
internal readonly record struct Valuation(double Cost, int First)
{
    /// <summary>Costs closer than this, relatively, tie; the first in the given order wins.</summary>
    public const double Tie = 1e-9;

    public static Valuation None { get; } = new(double.PositiveInfinity, -1);

    public Valuation OrBetter(Valuation other) => First < 0 || other.Cost < Cost - Tie * Math.Abs(Cost) ? other : this;
}
