using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Reasoning.Learning;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Model;

/// <summary>Which faults each machine could have: a job is evidence only of how those compare with each other.</summary>
internal static class ScopesFromNotes
{
    /// <summary>Scope of a job whose machine no note knows.</summary>
    private const string SomeMachine = "(some machine)";

    /// <summary>One for every class, one for every device, and one for a machine of some class, whichever.</summary>
    public static ImmutableArray<KnownScope> Of(Notebook notes)
    {
        ImmutableArray<KnownScope> classes = [.. notes.Of<DeviceClass>().Select(c => Of(DeviceScope.Of(notes, null, c)))];
        var devices = notes.Of<Device>()
            .Select(d => (Device: d, Class: notes.Find<DeviceClass>(d.Class)))
            .Where(d => d.Class is not null)
            .Select(d => Of(DeviceScope.Of(notes, d.Device, d.Class!)));
        return [.. classes.Concat(devices).DistinctBy(s => s.Id), Some([.. classes.Where(c => c.Availability.Count > 1)])];
    }

    public static KnownScope Of(DeviceScope scope) => new(
        scope.Levels[0],
        scope.Faults.Select(f => f.Id).ToImmutableSortedDictionary(fault => fault, scope.Availability, StringComparer.Ordinal).Add(SpecialFaults.NothingWrong, 1));

    /// <summary>Id of the scope of a job's machine.</summary>
    public static string Of(Job job, Notebook notes) => notes.Find<Device>(job.Device) is { } device
        ? notes.Find<DeviceClass>(device.Class) is null ? SomeMachine : device.Id
        : notes.Find<DeviceClass>(job.Class)?.Id ?? SomeMachine;

    /// <param name="classes">Those of which the notes know faults.</param>
    private static KnownScope Some(ImmutableArray<KnownScope> classes) => new(SomeMachine, classes.SelectMany(c => c.Availability)
        .GroupBy(a => a.Key, a => a.Value, StringComparer.Ordinal)
        .ToImmutableSortedDictionary(a => a.Key, a => Math.Min(1, a.Sum() / Math.Max(1, classes.Length)), StringComparer.Ordinal));
}
