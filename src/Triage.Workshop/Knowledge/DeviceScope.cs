using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Workshop.Knowledge;

/// <summary>What the notes know that applies to one machine: its class, roles, faults, tests, resets and access tree, as far as they fit its build.</summary>
public sealed record DeviceScope
{
    public required Device? Device { get; init; }

    public required DeviceClass Class { get; init; }

    /// <summary>What is told of the machine's build, by its device note and by the job.</summary>
    public required Build Build { get; init; }

    public required ImmutableArray<Role> Roles { get; init; }

    public required ImmutableArray<Fault> Faults { get; init; }

    public required ImmutableArray<Finding> Findings { get; init; }

    /// <summary>Findings that can be asked for: none that a test reveals, here or in other classes only; that test says where the question makes sense.</summary>
    public required ImmutableArray<Finding> Questions { get; init; }

    public required ImmutableArray<Test> Tests { get; init; }

    /// <summary>What only the owner can tell: asked while he stands at the counter.</summary>
    public ImmutableArray<Finding> AskedAtTheCounter =>
        [.. Findings.Where(f => Class.Counter.IsEmpty ? Tests.Any(t => t.Way == TestWay.Ask && t.Reveals == f.Id) : Class.Counter.Contains(f.Id))];

    public required ImmutableArray<Reset> Resets { get; init; }

    public required ImmutableArray<AccessStep> Access { get; init; }

    public string Name => Device?.Name ?? Class.Name;

    /// <summary>Hazards of its class that this build has or may have; one hands it over for those that it is likelier than not to have.</summary>
    public ImmutableArray<Caution> Cautions => [.. Class.Cautions.Where(c => Fits(c.Build)).Select(c => Chance(c.Build) >= 0.5 ? c : c with { HandOver = false })];

    public ImmutableArray<string> StopAtOnce => [.. Class.StopAtOnce.Where(s => Fits(s.Build)).Select(s => s.Say)];

    /// <summary>Traits in which machines of this kind differ and that nobody has told yet.</summary>
    public ImmutableArray<Trait> Untold => [.. Class.Builds.Where(t => Build.Of(t.Id) is null)];

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

    /// <summary>The access steps that something opens on the way, from the outside in; none when it needs nothing opened.</summary>
    public IEnumerable<AccessStep> WayTo(Effort effort)
    {
        var way = new Stack<AccessStep>();
        for (var step = Behind(effort); step is not null && Access.FirstOrDefault(s => s.Id == step) is { } found; step = found.Behind)
            way.Push(found);
        return way;
    }

    /// <summary>Whether this machine can meet a condition: nothing told of it speaks against it, and its class knows what is asked for.</summary>
    public bool Fits(BuildCondition? condition) => Chance(condition) > 0;

    /// <summary>Chance that this machine could have a fault at all, by its build, 0 … 1.</summary>
    public double Availability(string id) => Faults.FirstOrDefault(f => f.Id == id) is { } fault ? Availability(fault) : 0;

    private double Availability(Fault fault) =>
        ConditionsOf(fault).Distinct().Aggregate(1.0, (chance, condition) => chance * Chance(condition));

    /// <summary>What a fault needs is often what its role needs: said twice, it counts once.</summary>
    private IEnumerable<BuildCondition> ConditionsOf(Fault fault) =>
        new[] { fault.Build, fault.Role is { } role ? Roles.FirstOrDefault(r => r.Id == role)?.Build : null }.OfType<BuildCondition>();

    /// <summary>Chance that this machine meets a condition: 0 or 1 where its build is told, else by the shares of its class.</summary>
    public double Chance(BuildCondition? condition) => condition?.ChanceOn(Build, Class.Builds) ?? 1;

    /// <param name="told">What the job tells of the build; the device note may tell more.</param>
    public static DeviceScope Of(Notebook notes, Device? device, DeviceClass deviceClass, Build? told = null)
    {
        var build = (device?.Build ?? Build.Untold).With(told ?? Build.Untold);
        bool Fits(BuildCondition? condition) => condition is null || condition.ChanceOn(build, deviceClass.Builds) > 0;
        bool Reached(Effort effort) => !Closed(effort.Access, device, deviceClass, build);
        var roles = RolesOf(device, deviceClass).RemoveAll(r => !Fits(r.Build));
        var faults = notes.Of<Fault>().Where(f => Fits(f.Build) && Applies(f, device, deviceClass, roles)).Select(f => f with { Mends = [.. f.Mends.Where(m => Fits(m.Build) && Reached(m.Effort))] }).ToImmutableArray();
        var shown = ShownBy(faults, notes);
        var own = ShownBy(faults.Where(f => f.Class is not null || f.Device is not null), notes);
        var findings = notes.Of<Finding>()
            .Where(f => Fits(f.Build) && (f.Classes.Contains(deviceClass.Id) || (f.Classes.IsEmpty ? shown : own).Contains(f.Id))).ToImmutableArray();
        var known = findings.Select(f => f.Id).ToHashSet(StringComparer.Ordinal);
        var tested = notes.Of<Test>().SelectMany(t => t.Revealed).ToHashSet(StringComparer.Ordinal);
        return new()
        {
            Device = device,
            Class = deviceClass,
            Build = build,
            Roles = roles,
            Faults = faults,
            Findings = findings,
            Questions = [.. findings.Where(f => f.Ask is not null && (f.Classes.IsEmpty || f.Classes.Contains(deviceClass.Id)) && !tested.Contains(f.Id))],
            Tests = [.. notes.Of<Test>().Where(t => Fits(t.Build) && Reached(t.Effort) && Offered(t, deviceClass, roles, faults, known)).Select(t => t with { Round = [.. t.Round.Where(known.Contains)] })],
            Resets = ResetsOf(notes, device, deviceClass).RemoveAll(r => !Fits(r.Build) || !Reached(r.Effort)),
            Access = AccessOf(device, deviceClass).RemoveAll(s => !Fits(s.Build)),
        };
    }

    /// <summary>A fault of a role that many classes have may show what only some of them can: that is no finding of the others.</summary>
    private static HashSet<string> ShownBy(IEnumerable<Fault> faults, Notebook notes) =>
        faults.SelectMany(f => f.Shows).Select(s => notes.Today(s.Finding)).ToHashSet(StringComparer.Ordinal);

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
            : !test.Round.IsEmpty ? test.Round.Any(findings.Contains)
            : test.Decides is { } fault ? faults.Any(f => f.Id == fault)
            : test.MeasuresRole is { } role ? roles.Any(r => r.Id == role) && faults.Any(f => f.Role == role && (test.MeasuresPart is null || f.Part == test.MeasuresPart))
            : test.MeasuresPart is { } part && faults.Any(f => f.Part == part));

    /// <summary>Exact keys of this device replace the general form of the same reset.</summary>
    private static ImmutableArray<Reset> ResetsOf(Notebook notes, Device? device, DeviceClass deviceClass)
    {
        var exact = notes.Of<Reset>().Where(r => r.Device is not null && r.Device == device?.Id).ToImmutableArray();
        var replaced = exact.Select(r => r.FormOf).ToHashSet();
        return [.. exact, .. notes.Of<Reset>().Where(r => r.Device is null && r.Class == deviceClass.Id && !replaced.Contains(r.Id))];
    }

    /// <summary>Whether the way to an access step cannot be opened in this build.</summary>
    private static bool Closed(string? step, Device? device, DeviceClass deviceClass, Build build)
    {
        var tree = AccessOf(device, deviceClass);
        for (; step is not null && tree.FirstOrDefault(s => s.Id == step) is { } found; step = found.Behind)
        {
            if (found.Build?.Fits(build) == false)
                return true;
        }

        return false;
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
