using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Workshop.Readings;

/// <summary>The readings between the same two repairs: of the same state of the machine's parts.</summary>
internal static class ReadingStretch
{
    /// <summary>A reading that is not in the log yet counts as its last.</summary>
    public static ImmutableArray<Read> Around(Read entry, ImmutableArray<LogEntry> log)
    {
        var at = log.IndexOf(entry);
        var (before, after) = at < 0 ? (log, []) : (log[..at], log[(at + 1)..]);
        return
        [
            .. before.Reverse().TakeWhile(e => !Repairs(e)).Reverse().OfType<Read>(),
            entry,
            .. after.TakeWhile(e => !Repairs(e)).OfType<Read>(),
        ];
    }

    private static bool Repairs(LogEntry entry) => entry is Fixed or Swapped;
}
