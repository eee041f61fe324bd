using Triage.Notes.Kinds;

namespace Triage.Notes.Linting;

/// <summary>Which machines a fault, and with it a test or a mend, can be met in: classes, and devices with parts of their own.</summary>
internal sealed class Reach
{
    private readonly NoteIndex index;
    private readonly List<Note> machines;
    private readonly Dictionary<string, List<Fault>> faults;
    private readonly ILookup<string, Fault> byMend;

    public Reach(NoteIndex index)
    {
        this.index = index;
        machines = [.. index.Notes.Where(n => n is DeviceClass), .. index.Notes.OfType<Device>().Where(d => index.Resolve(d.Class) is DeviceClass)];
        var all = index.Notes.OfType<Fault>().ToList();
        faults = machines.ToDictionary(m => m.Id, m => all.Where(f => Meets(m, f)).ToList());
        byMend = all.SelectMany(f => f.Mends.Select(m => (m.Id, Fault: f))).ToLookup(p => p.Id, p => p.Fault);
    }

    /// <summary>
    /// Machines that the step of an access reference in this note reaches, though their tree has no such step. A device is only named
    /// when its class is not.
    /// </summary>
    public IEnumerable<string> Lacking(Note note, string step)
    {
        var lacking = machines.Where(m => Reaches(note, step, m) && !index.AccessOf(m).Contains(step)).ToList();
        return lacking.Where(m => m is not Device d || lacking.All(c => c.Id != ClassOf(d).Id)).Select(m => m.Id).Order(StringComparer.Ordinal);
    }

    public IReadOnlyList<Fault> FaultsOf(DeviceClass machines) => faults[machines.Id];

    public IEnumerable<Test> TestsOf(DeviceClass machines) => index.Notes.OfType<Test>().Where(t => Offered(t, machines));

    /// <summary>Whether some device meets it that brings what its class lacks.</summary>
    public bool IsOfDevices(Note note) => machines.OfType<Device>().Any(d => note switch
    {
        Fault fault => faults[d.Id].Contains(fault) && !faults[ClassOf(d).Id].Contains(fault),
        Test test => Offered(test, d) && !Offered(test, ClassOf(d)),
        _ => false,
    });

    /// <summary>Classes that a note is for; none for a part class or a machine that nobody knows.</summary>
    public IEnumerable<DeviceClass> ClassesOf(Note note) => note switch
    {
        DeviceClass c => [c],
        Device d => index.Resolve(d.Class) is DeviceClass c ? [c] : [],
        Job job => (job.Device ?? job.Class) is { } machine && index.Resolve(machine) is { } known ? ClassesOf(known) : [],
        Fault fault => machines.Where(m => faults[m.Id].Contains(fault)).Select(ClassOf).Distinct(),
        Test test => machines.Where(m => Offered(test, m)).Select(ClassOf).Distinct(),
        Reset reset => machines.Where(m => reset.Device == m.Id || reset.Class == m.Id).Select(ClassOf).Distinct(),
        Finding finding => machines.Where(m => CanShow(finding, m)).Select(ClassOf).Distinct(),
        _ => [],
    };

    private bool CanShow(Finding finding, Note machine) =>
        finding.Classes.Contains(ClassOf(machine).Id) || faults[machine.Id].Any(f => f.Shows.Any(s => s.Finding == finding.Id));

    private bool Reaches(Note note, string step, Note machine) => note switch
    {
        Test test => Offered(test, machine),
        Reset reset => reset.Device == machine.Id || reset.Class == ClassOf(machine).Id,
        Fault fault => fault.Mends.Where(m => m.Effort.Access == step).SelectMany(m => byMend[m.Id]).Any(faults[machine.Id].Contains),
        _ => false,
    };

    private bool Offered(Test test, Note machine)
    {
        var here = faults[machine.Id];
        if (!test.Classes.IsEmpty && !test.Classes.Contains(ClassOf(machine).Id))
            return false;
        if (!test.Revealed.IsEmpty)
            return test.Revealed.Any(finding => here.Any(f => f.Shows.Any(s => s.Finding == finding)) || (index.Resolve(finding) as Finding)?.Classes.Contains(ClassOf(machine).Id) == true);
        if (test.Decides is { } fault)
            return here.Any(f => f.Id == fault);
        return here.Any(f => (test.MeasuresRole is null || f.Role == test.MeasuresRole) && (test.MeasuresPart is null || f.Part == test.MeasuresPart));
    }

    private bool Meets(Note machine, Fault fault)
    {
        if (fault.Device is not null)
            return fault.Device == machine.Id;
        if (fault.Class is not null && fault.Class != ClassOf(machine).Id)
            return false;
        if (fault.Role is not null)
            return PartsIn(machine, fault.Role).Any(part => fault.Part is null || part is null || part == fault.Part);
        return fault.Class is not null || fault.Part is null || HasPart(machine, fault.Part);
    }

    /// <summary>What plays a role in a machine: the device's own part before the class's usual one; null for a part that varies.</summary>
    private IEnumerable<string?> PartsIn(Note machine, string role)
    {
        var device = machine as Device;
        var own = device?.Parts.FirstOrDefault(p => p.Role == role);
        var usual = ClassOf(machine).Roles.Where(r => r.Id == role && device?.Without.Contains(role) != true).Select(r => r.Part);
        return own is null ? usual : [own.Part];
    }

    private bool HasPart(Note machine, string part) =>
        (machine as Device)?.Parts.Any(p => p.Part == part) == true || ClassOf(machine).Roles.Any(r => r.Part == part && (machine as Device)?.Without.Contains(r.Id) != true);

    private DeviceClass ClassOf(Note machine) => machine as DeviceClass ?? (DeviceClass)index.Resolve(((Device)machine).Class)!;
}
