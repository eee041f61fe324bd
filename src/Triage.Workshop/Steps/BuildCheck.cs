using Triage.Notes.Kinds;

namespace Triage.Workshop.Steps;

/// <summary>Whether what is told of a build can be of a machine of this class.</summary>
internal static class BuildCheck
{
    public static Refusal? Refuses(Build build, DeviceClass kind) =>
        build.Traits.Select(told => kind.Builds.FirstOrDefault(t => t.Id == told.Trait) is not { } trait
                ? WorkshopRefusals.NoSuch("trait", told.Trait, kind.Builds.Select(t => t.Id))
                : told.Values.FirstOrDefault(v => trait.Values.All(known => known.Id != v)) is { } wrong ? WorkshopRefusals.NoSuchValue(trait.Name, wrong, trait.Values.Select(v => v.Id))
                : told.Values.Length > 1 && !trait.Several ? WorkshopRefusals.OnlyOneOf(trait.Name, told.Values)
                : null)
            .OfType<Refusal>().FirstOrDefault();
}
