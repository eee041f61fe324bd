using System.Globalization;
using Triage.Workshop.Steps;

namespace Triage.Cli.Paper;

/// <summary>The versions of a note, the newest first, each with what took its place.</summary>
internal static class HistoryText
{
    /// <summary>As much of a version's name as one types.</summary>
    private const int Typed = 8;

    public static void Write(Sheet paper, string note, NotePast past)
    {
        paper.Title(past.Versions.IsEmpty ? $"Nothing was replaced in {note} yet" : $"What was replaced in {note}");
        foreach (var version in past.Versions)
            paper.Field(version.Version[..Typed], $"until {version.Until.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)}; {version.Replaced(past.ReplacedBy(version))}");
        if (!past.Versions.IsEmpty)
            paper.Say($"See one with --show {past.Versions[0].Version[..Typed]}, bring one back with --back {past.Versions[0].Version[..Typed]}.");
    }
}
