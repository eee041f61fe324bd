using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Workshop.Knowledge;

/// <summary>What the notes know that applies to one device: its class, roles, faults, tests, resets and access tree.</summary>
public sealed record DeviceScope
{
    public required Device? Device { get; init; }

    public required DeviceClass Class { get; init; }

    public required ImmutableArray<Role> Roles { get; init; }

    public required ImmutableArray<Fault> Faults { get; init; }

    public required ImmutableArray<Finding> Findings { get; init; }

    /// <summary>Findings that can be asked for: none that a test reveals, here or in other classes only; that test says where the question makes sense.</summary>
    public required ImmutableArray<Finding> Questions { get; init; }

    public required ImmutableArray<Test> Tests { get; init; }

    public required ImmutableArray<Reset> Resets { get; init; }

    public required ImmutableArray<AccessStep> Access { get; init; }

    public string Name => Device?.Name ?? Class.Name;

    /// <summary>Levels for learning, most special first.</summary>
    public ImmutableArray<string> Levels => Device is null ? [Class.Id] : [Device.Id, Class.Id];

    /// <summary>The part class that plays a role here: the device's own part, or the usual one of the class.</summary>
    public string? PartIn(string role) =>
        Device?.Parts.FirstOrDefault(p => p.Role == role)?.Part ?? Roles.FirstOrDefault(r => r.Id == role)?.Part;

    /// <summary>The access step that something needs; the outermost cover for a step that this machine's tree does not have, null when it has none.</summary>
    public string? Behind(Effort effort) =>
        effort.Access is null || Has(effort.Access) ? effort.Access : Access.FirstOrDefault(s => s.Behind is null)?.Id;

    /// <summary>Whether this machine's tree has an access step.</summary>
    public bool Has(string step) => Access.Any(s => s.Id == step);

    public static DeviceScope Of(Notebook notes, Device? device, DeviceClass deviceClass)
    {
        var roles = RolesOf(device, deviceClass);
        var faults = notes.Of<Fault>().Where(f => Applies(f, device, deviceClass, roles)).ToImmutableArray();
        var shown = faults.SelectMany(f => f.Shows).Select(s => notes.Today(s.Finding)).ToHashSet(StringComparer.Ordinal);
        var findings = notes.Of<Finding>().Where(f => shown.Contains(f.Id) || f.Classes.Contains(deviceClass.Id)).ToImmutableArray();
        var known = findings.Select(f => f.Id).ToHashSet(StringComparer.Ordinal);
        var tested = notes.Of<Test>().Select(t => t.Reveals).OfType<string>().ToHashSet(StringComparer.Ordinal);
        return new()
        {
            Device = device,
            Class = deviceClass,
            Roles = roles,
            Faults = faults,
            Findings = findings,
            Questions = [.. findings.Where(f => f.Ask is not null && (f.Classes.IsEmpty || f.Classes.Contains(deviceClass.Id)) && !tested.Contains(f.Id))],
            Tests = [.. notes.Of<Test>().Where(t => Offered(t, deviceClass, roles, faults, known))],
            Resets = ResetsOf(notes, device, deviceClass),
            Access = AccessOf(device, deviceClass),
        };
    }

    private static ImmutableArray<Role> RolesOf(Device? device, DeviceClass deviceClass) =>
        [.. deviceClass.Roles.Where(r => device?.Without.Contains(r.Id) != true),
         .. (device?.Parts ?? [])
            .Where(p => p.Role is not null && deviceClass.Roles.All(r => r.Id != p.Role))
            .DistinctBy(p => p.Role)
            .Select(p => new Role(p.Role!, p.Role!, p.Part, null))];

    private static bool Applies(Fault fault, Device? device, DeviceClass deviceClass, ImmutableArray<Role> roles)
    {
        if (fault.Device is not null)
            return fault.Device == device?.Id;
        if (fault.Class is not null && fault.Class != deviceClass.Id)
            return false;
        if (fault.Role is not null)
            return roles.FirstOrDefault(r => r.Id == fault.Role) is { } role && PartFits(fault, role, device);
        return fault.Class is not null || fault.Part is null || HasPart(fault.Part, device, roles);
    }

    private static bool PartFits(Fault fault, Role role, Device? device)
    {
        var own = device?.Parts.FirstOrDefault(p => p.Role == role.Id)?.Part;
        return fault.Part is null || (own ?? role.Part) is not { } part || part == fault.Part;
    }

    private static bool HasPart(string part, Device? device, ImmutableArray<Role> roles) =>
        device?.Parts.Any(p => p.Part == part) == true || roles.Any(r => r.Part == part);

    private static bool Offered(Test test, DeviceClass deviceClass, ImmutableArray<Role> roles, ImmutableArray<Fault> faults, HashSet<string> findings) =>
        (test.Classes.IsEmpty || test.Classes.Contains(deviceClass.Id))
        && (test.Reveals is { } finding ? findings.Contains(finding)
            : test.MeasuresRole is { } role ? roles.Any(r => r.Id == role) && faults.Any(f => f.Role == role && (test.MeasuresPart is null || f.Part == test.MeasuresPart))
            : test.MeasuresPart is { } part && faults.Any(f => f.Part == part));

    /// <summary>Exact keys of this device replace the general form of the same reset.</summary>
    private static ImmutableArray<Reset> ResetsOf(Notebook notes, Device? device, DeviceClass deviceClass)
    {
        var exact = notes.Of<Reset>().Where(r => r.Device is not null && r.Device == device?.Id).ToImmutableArray();
        var replaced = exact.Select(r => r.FormOf).ToHashSet();
        return [.. exact, .. notes.Of<Reset>().Where(r => r.Device is null && r.Class == deviceClass.Id && !replaced.Contains(r.Id))];
    }

    private static ImmutableArray<AccessStep> AccessOf(Device? device, DeviceClass deviceClass)
    {
        var own = device?.Access ?? [];
        var steps = own.Concat(deviceClass.Access).DistinctBy(s => s.Id).ToDictionary(s => s.Id, StringComparer.Ordinal);
        return [.. steps.Values.Select(s => LeadsOut(s, steps) ? s : s with { Behind = null })];
    }

    /// <summary>Whether one comes to an outermost step; a step behind one that is not there, or behind itself, is taken as outermost.</summary>
    private static bool LeadsOut(AccessStep step, Dictionary<string, AccessStep> steps)
    {
        for (var passed = 0; step.Behind is { } behind; passed++)
        {
            if (passed == steps.Count || !steps.TryGetValue(behind, out step!))
                return false;
        }

        return true;
    }
}
