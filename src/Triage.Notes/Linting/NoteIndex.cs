using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Notes.Linting;

/// <summary>Notes of all open books, to look up what an id stands for.</summary>
public sealed class NoteIndex
{
    private readonly Dictionary<string, Note> _byId = [];
    private readonly Dictionary<string, Note> _byFormerId = [];
    private readonly Dictionary<string, Fault> _fixes = [];

    public NoteIndex(IEnumerable<Note> notes)
    {
        foreach (var note in notes)
        {
            _byId.TryAdd(note.Id, note);
            foreach (var former in note.Formerly)
            {
                _byFormerId.TryAdd(former, note);
            }

            foreach (var mend in (note as Fault)?.Mends.Where(m => m.Name is not null) ?? [])
            {
                _fixes.TryAdd(mend.Id, (Fault)note);
            }
        }

        Roles = [.. _byId.Values.OfType<DeviceClass>().SelectMany(c => c.Roles).Select(r => r.Id)];
        Suggestions = new Suggestions(this);
        ProtectSteps = [.. _byId.Values.OfType<DeviceClass>().SelectMany(c => c.Protect).Select(p => p.Id)];
        AccessSteps = [.. _byId.Values.SelectMany(n => OwnAccess(n)).Select(s => s.Id)];
    }

    /// <summary>Roles of all device classes.</summary>
    public ImmutableHashSet<string> Roles { get; }

    /// <summary>Steps of all access trees.</summary>
    public ImmutableHashSet<string> AccessSteps { get; }

    /// <summary>Protect steps of all device classes.</summary>
    public ImmutableHashSet<string> ProtectSteps { get; }

    /// <summary>Ids of fixes that have a name somewhere.</summary>
    public IReadOnlyCollection<string> Fixes => _fixes.Keys;

    public IReadOnlyCollection<Note> Notes => _byId.Values;

    internal Suggestions Suggestions { get; }

    /// <summary>Worked out when first asked for: most notes name no access step.</summary>
    internal Reach Reach => field ??= new Reach(this);

    /// <summary>The note with an id, or the one that had it formerly; null when there is none.</summary>
    public Note? Resolve(string id) => _byId.GetValueOrDefault(id) ?? _byFormerId.GetValueOrDefault(id);

    /// <summary>The fault note that defines a fix; null when none does.</summary>
    public Fault? DefinerOf(string fix) => _fixes.GetValueOrDefault(fix);

    /// <summary>Steps of a device's own tree and its class's, or of a class's.</summary>
    public IEnumerable<string> AccessOf(Note machine) =>
        OwnAccess(machine).Concat(machine is Device d && Resolve(d.Class) is DeviceClass c ? c.Access : []).Select(s => s.Id);

    /// <summary>Roles of a class, or of a device's class.</summary>
    public IEnumerable<string> RolesOf(Note machine) => machine switch
    {
        DeviceClass c => c.Roles.Select(r => r.Id),
        Device d when Resolve(d.Class) is DeviceClass c => RolesOf(c).Concat(d.Parts.Select(p => p.Role).OfType<string>()),
        _ => [],
    };

    private static ImmutableArray<AccessStep> OwnAccess(Note note) => note switch
    {
        DeviceClass c => c.Access,
        Device d => d.Access,
        _ => [],
    };
}
