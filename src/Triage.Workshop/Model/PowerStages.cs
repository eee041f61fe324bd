using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Model;

/// <summary>
/// Cold checks before limited power before full power, where something calls for it: smell, smoke, tingle, liquid, a blown fuse, years in store,
/// a new hum (findings whose note says so), or work behind a cover with mains. What its owner ran lately in just this state may run as it came.
/// </summary>
internal static class PowerStages
{
    /// <summary>Whether the stages hold for this job.</summary>
    public static bool Limited(Job job, DeviceScope scope, Notebook notes) =>
        job.Log.Any(e => e switch
        {
            Saw saw => LimitsPower(saw.Finding, saw.Value, notes),
            Tested tested => notes.Find<Test>(tested.Test)?.Reveals is { } finding && LimitsPower(finding, tested.Outcome, notes),
            Fixed fix => WorkedOnMains(fix.Fix, scope),
            Swapped { Fix: { } fix } => WorkedOnMains(fix, scope),
            _ => false,
        });

    /// <summary>Ids of what comes before a step at this power.</summary>
    public static IEnumerable<string> Before(PowerStage stage, Job job, DeviceScope scope)
    {
        bool Allowed(PowerStage power) => job.Log.OfType<Powered>().Any(p => p.Stage >= power) || (power == PowerStage.Limited && scope.Class.LimitedPower.Any(id => Done(id, job)));
        if (stage == PowerStage.Cold || Allowed(stage))
            return [];
        var limited = scope.Class.LimitedPower.FirstOrDefault(id => scope.Tests.Any(t => t.Id == id));
        return stage == PowerStage.Full && limited is not null && !Allowed(PowerStage.Limited) ? [.. scope.Class.BeforePower, limited] : scope.Class.BeforePower;
    }

    private static bool Done(string test, Job job) => job.Log.Any(e => e is Tested t && t.Test == test || e is RoundDone r && r.Round == test);

    private static bool LimitsPower(string finding, string value, Notebook notes) =>
        notes.Find<Finding>(finding) is { LimitsPower: true } known && known.IndexOf(value) > 0;

    private static bool WorkedOnMains(string fix, DeviceScope scope) =>
        scope.Faults.SelectMany(f => f.Mends).Where(m => m.Id == fix && m.Effort.Access is not null)
            .Any(m => m.Effort.Cautions.Any(c => c.Hazard == Hazard.Mains));
}
