using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Workshop.Answers;
using Triage.Workshop.Answers.Wording;
using Triage.Workshop.Jobs;
using Triage.Workshop.Model;

namespace Triage.Workshop.Reviews;

/// <summary>What a closed job changed: the same complaint, before and after.</summary>
/// <param name="Device">Device id on which it was asked again.</param>
/// <param name="Fault">Cause of the closed job.</param>
public sealed record Taught(string Device, string DeviceName, string Fault, string FaultName, double Before, double After)
{
    /// <summary>The closed job's machine first, then every other device that can have the fault.</summary>
    internal static ImmutableArray<Taught> By(BenchKnowledge before, BenchKnowledge after, Job job) =>
        after.Mishaps.Or(job.Place.Path, "comparing what closing it changed", () => Compared(before, after, job), _ => []);

    private static ImmutableArray<Taught> Compared(BenchKnowledge before, BenchKnowledge after, Job job)
    {
        var causes = job.Causes.Where(c => after.Notes.Find<Fault>(c.Fault) is not null).ToList();
        var others = after.Notes.Of<Device>().OrderByDescending(d => d.Id == job.Device).ThenBy(d => d.Id, StringComparer.Ordinal);
        return
        [
            .. from device in others
               from cause in causes
               let asked = SameComplaint(job, device)
               let then = new Answering(after).Chance(asked, cause.Fault)
               where then is not null
               select new Taught(device.Id, device.Name, cause.Fault, WordsFor.CauseName(cause.Fault, after.Notes), new Answering(before).Chance(asked, cause.Fault) ?? 0, then.Value),
        ];
    }

    /// <summary>What the unit showed when it came in, on another device.</summary>
    private static Job SameComplaint(Job job, Device device) => job with
    {
        Device = device.Id,
        Outcome = null,
        Log = [.. job.Log.AsItCameIn().Where(e => e is Saw)],
    };
}
