using System.Globalization;
using Xunit;

namespace Triage.Workshop.Tests.Steps;

/// <summary>Where there are enough closed jobs, their words suggest findings that no phrasing has; suggestions are only that.</summary>
public sealed class PastComplaintsTest
{
    private const string Complaint = "it went all zonky on us";

    [Theory]
    [InlineData(160, true)]
    [InlineData(20, false)]
    public async Task Words_of_past_jobs_suggest_findings_once_there_are_enough(int jobs, bool suggested)
    {
        await using var bench = DemoBench.Open(prepare: folder => Write(folder, jobs));
        var asking = bench.Live.Steps.Ask("Pellwick S-40", Complaint);
        Assert.Empty(asking.Recognition.Findings);
        Assert.Equal(suggested, asking.Recognition.Suggested.Any(s => (s.Finding, s.Value) == ("display", "garbled")));
        Assert.Equal(suggested, asking.Remarks.Any(r => r.StartsWith("Past jobs with such words often had", StringComparison.Ordinal)));
    }

    private static void Write(string folder, int jobs)
    {
        var place = Directory.CreateDirectory(Path.Combine(folder, "demo", "jobs", "many")).FullName;
        for (var n = 0; n < jobs; n++)
        {
            var (words, value) = n % 2 == 0 ? ("it went zonky, all of it", "garbled") : ("the lid is a bit stiff when I open it", "normal");
            File.WriteAllText(Path.Combine(place, $"m{n}.md"), string.Create(CultureInfo.InvariantCulture, $"""
                ---
                format: 1
                kind: job
                id: many-{n}
                name: one of many
                device: pellwick-s40
                opened: 2025-01-01T10:00:00+01:00
                complaint: "{words} {n}"
                log:
                  - [at: 2025-01-01T10:00:00+01:00, saw: display, value: {value}]
                outcome: unsolved
                closed: 2025-01-02T10:00:00+01:00
                generated: true
                ---

                """).Replace("- [", "- {", StringComparison.Ordinal).Replace($"{value}]", value + "}", StringComparison.Ordinal));
        }
    }
}
