using Triage.Measurements.Readings;

namespace Triage.Workshop.Steps;

/// <summary>What was understood of a quick line; the line itself is kept as written whatever this says.</summary>
public static class QuickLineRead
{
    public static IEnumerable<string> Remarks(string text)
    {
        var line = QuickReading.Read(text);
        if (line.Pieces.Length > 0)
            yield return $"Read as: {string.Join(", ", line.Pieces.Select(p => p.Says))}.";
        foreach (var problem in line.Problems)
            yield return problem.ToString();
        foreach (var span in line.NotUnderstood)
            yield return $"Not read: “{text.Substring(span.Start, span.Length)}”.";
    }
}
