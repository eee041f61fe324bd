using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Workshop.Jobs;

/// <summary>What stands open.</summary>
public static class OpenSteps
{
    /// <summary>Access steps that were opened and not shut since, in the order in which they were first named.</summary>
    public static ImmutableArray<string> Of(IEnumerable<LogEntry> log) =>
        [.. log.OfType<Opened>().GroupBy(o => o.Step, StringComparer.Ordinal).Where(step => !step.Last().Shut).Select(step => step.Key)];
}
