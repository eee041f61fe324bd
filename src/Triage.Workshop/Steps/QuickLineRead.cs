using Triage.Notes.Kinds;
using QuickLine = Triage.Measurements.Readings.QuickLine;

namespace Triage.Workshop.Steps;

/// <summary>What was understood of a quick line; the line itself is kept as written whatever this says.</summary>
public static class QuickLineRead
{
    public static IEnumerable<string> Remarks(QuickLine line)
    {
        if (line.Pieces.Length > 0)
            yield return $"Read as: {string.Join(", ", line.Pieces.Select(p => p.Says))}.";
        foreach (var problem in line.Problems)
            yield return problem.ToString();
        foreach (var span in line.NotUnderstood)
            yield return $"Not read: “{line.Text.Substring(span.Start, span.Length)}”.";
    }

    /// <summary>An entry recorded beside the line; a reading with what it says.</summary>
    internal static string Recorded(Bench bench, Job job, LogEntry entry) =>
        entry is Read read && bench.VerdictOn(job, read) is { } verdict ? $"Recorded as a reading. {verdict.Words}."
        : $"Recorded: {bench.InWords(job, entry)}.";
}
