using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Workshop.Jobs;

namespace Triage.Workshop.Steps;

/// <summary>What is worth a look by the way once a machine is open.</summary>
public static class WhileOpen
{
    /// <summary>What the note of the job's class says, while any step of it is open; else nothing.</summary>
    public static ImmutableArray<string> Of(Job job, Bench bench) =>
        OpenSteps.Of(job.Log).IsEmpty ? [] : bench.ScopeOf(job)?.Class.WhileOpen ?? [];
}
