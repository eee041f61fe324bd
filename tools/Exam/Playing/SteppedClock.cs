namespace Triage.Tools.Exam.Playing;

/// <summary>A clock that only goes on when something was done.</summary>
internal sealed class SteppedClock : TimeProvider
{
    private DateTimeOffset now = new(2026, 11, 2, 9, 0, 0, TimeSpan.Zero);

    public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

    public override DateTimeOffset GetUtcNow() => now;

    public void Pass(double minutes) => now = now.AddMinutes(minutes);
}
