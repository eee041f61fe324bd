namespace MadeUpJobs;

/// <summary>The time at which the next line of a job's log was written.</summary>
internal sealed class Clock(DateTimeOffset start)
{
    public DateTimeOffset Now { get; private set; } = start;

    /// <summary>Moves on, and says when that was.</summary>
    public DateTimeOffset After(double minutes)
    {
        Now = Now.AddMinutes(Math.Max(1, Math.Round(minutes)));
        return Now;
    }

    /// <summary>Another evening.</summary>
    public void NextDay(double days) => Now = Now.AddDays(Math.Max(1, Math.Round(days))).AddMinutes(17);
}
