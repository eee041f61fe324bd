using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Workshop.Steps;

/// <summary>What is worth a look by the way once a machine is open.</summary>
public static class WhileOpen
{
    /// <summary>What the note of the job's class says, while any step of it is open; else nothing.</summary>
    public static ImmutableArray<string> Of(Job job, Bench bench) =>
        job.Log.OfType<Opened>().GroupBy(o => o.Step, StringComparer.Ordinal).Any(step => !step.Last().Shut)
            ? bench.Notes.Find<DeviceClass>(bench.Notes.Find<Device>(job.Device)?.Class ?? job.Class)?.WhileOpen ?? []
            : [];
}
