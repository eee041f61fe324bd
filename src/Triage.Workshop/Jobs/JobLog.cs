using Triage.Notes.Kinds;

namespace Triage.Workshop.Jobs;

/// <summary>What the entries of a job's log, oldest first, say together. An action is what may have mended the machine: a reset, a fix, a swap.</summary>
public static class JobLog
{
    public static bool IsAction(this LogEntry entry) => entry is ResetTried or Fixed or Swapped;

    /// <summary>Reset or fix that an entry says was done; null for every other entry, and for a swap that stands for no fix.</summary>
    public static string? Action(this LogEntry entry) => entry switch
    {
        ResetTried reset => reset.Reset,
        Fixed fix => fix.Fix,
        Swapped swap => swap.Fix,
        _ => null,
    };

    /// <summary>What an action was seen to do; null for every other entry.</summary>
    public static Effect? EffectSeen(this LogEntry entry) => entry switch
    {
        ResetTried reset => reset.Effect,
        Fixed fix => fix.Effect,
        Swapped swap => swap.Effect,
        _ => null,
    };

    /// <summary>What was recorded before the first action: the machine as it came in.</summary>
    public static IEnumerable<LogEntry> AsItCameIn(this IEnumerable<LogEntry> log) => log.TakeWhile(e => !e.IsAction());

    /// <summary>Something was looked at, measured or tried at the bench.</summary>
    public static bool LookedAt(this IEnumerable<LogEntry> log) => log.Any(e => e is Tested or RoundDone or Read || e.IsAction());

    /// <summary>The newest entry of a reset or fix; null when nothing was done yet.</summary>
    public static LogEntry? LastAction(this IEnumerable<LogEntry> log) => log.LastOrDefault(e => e.Action() is not null);
}
