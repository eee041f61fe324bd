using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Model;

/// <summary>Which hazards of a class of machine a step meets: what lies behind a cover when it opens one, mains when it puts power on.</summary>
internal static class MachineHazards
{
    /// <summary>A step's own cautions, after those of the machine that it meets: a step shared by many classes cannot know what lies behind these covers.</summary>
    public static ImmutableArray<Caution> Met(DeviceScope scope, Effort effort, ImmutableArray<Caution> own) =>
        [.. scope.Cautions.Where(c => Meets(scope, effort, c) && own.All(o => o.Hazard != c.Hazard || (c.HandOver && !o.HandOver))), .. own.Where(o => scope.Fits(o.Build))];

    private static bool Meets(DeviceScope scope, Effort effort, Caution caution)
    {
        if (effort.Power < caution.Power)
            return false;
        if (caution.Reach is { } reach)
            return scope.WayTo(effort).Any(step => step.Id == reach);
        return caution.Hazard switch
        {
            Hazard.Mains => effort.Access is not null || effort.Power != PowerStage.Cold,
            Hazard.StoredCharge or Hazard.PictureTube or Hazard.MicrowaveHighVoltage or Hazard.Laser => effort.Access is not null,
            _ => false,
        };
    }
}
