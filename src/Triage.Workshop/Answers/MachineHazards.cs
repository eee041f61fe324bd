using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Workshop.Answers;

/// <summary>Which hazards of a class of machine a step meets: what lies behind a cover when it opens one, mains when it puts power on.</summary>
internal static class MachineHazards
{
    /// <summary>A step's own cautions, after those of the machine that it meets: a step shared by many classes cannot know what lies behind these covers.</summary>
    public static ImmutableArray<Caution> Cautions(DeviceClass machine, Effort effort, ImmutableArray<Caution> own) =>
        [.. machine.Cautions.Where(c => Meets(effort, c.Hazard) && own.All(o => o.Hazard != c.Hazard)), .. own];

    private static bool Meets(Effort effort, Hazard hazard) => hazard switch
    {
        Hazard.Mains => effort.Access is not null || effort.Power != PowerStage.Cold,
        Hazard.StoredCharge or Hazard.PictureTube or Hazard.MicrowaveHighVoltage or Hazard.Laser => effort.Access is not null,
        _ => false,
    };
}
