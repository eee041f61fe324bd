using Triage.Notes.Kinds;
using Triage.Service.Shown;
using Triage.Service.Wire;
using Triage.Workshop;

namespace Triage.Service.Jobs;

/// <summary>What lies on the shelf.</summary>
internal static class JobLines
{
    /// <summary>Open jobs whose next step is worked out for a list, and closed ones that are listed.</summary>
    private const int NextSteps = 12, RecentClosed = 12;

    public static IEnumerable<WireJobLine> Of(Bench bench, KnownAnswers answers)
    {
        var open = bench.Notes.Jobs.Where(j => j.IsOpen).OrderByDescending(j => j.Opened).ThenBy(j => j.Id, StringComparer.Ordinal);
        var closed = bench.Notes.Jobs.Where(j => !j.IsOpen).OrderByDescending(j => j.Closed).ThenBy(j => j.Id, StringComparer.Ordinal).Take(RecentClosed);
        return
        [
            .. open.Select((job, i) => new WireJobLine(job.Id, job.Name, null, WaitsFor(job), i < NextSteps ? answers.For(bench, job).Answer?.Next?.Name : null)),
            .. closed.Select(job => new WireJobLine(job.Id, job.Name, job.Outcome, null, null)),
        ];
    }

    private static string? WaitsFor(Job job) =>
        job.WaitsFor is not { } waiting ? null : waiting.Until is { } until ? FormattableString.Invariant($"{waiting.For}, until {until:yyyy-MM-dd}") : waiting.For;
}
