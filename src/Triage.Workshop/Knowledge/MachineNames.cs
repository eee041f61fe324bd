using Triage.Notes.Kinds;

namespace Triage.Workshop.Knowledge;

/// <summary>What machine somebody means.</summary>
/// <param name="Name">Its name, or the words as given.</param>
internal sealed record Machine(string Name, Device? Device, DeviceClass? Class);

/// <summary>Finds the device or class that words name.</summary>
internal static class MachineNames
{
    /// <summary>By id, by name or other name, by a name inside the words given, then by one inside the complaint; longest name first.</summary>
    public static Machine Resolve(string machine, string complaint, Notebook notes)
    {
        var said = machine.Trim();
        var device = notes.Find<Device>(said) ?? Inside(said, notes.Of<Device>());
        var known = device is null ? notes.Find<DeviceClass>(said) ?? Inside(said, notes.Of<DeviceClass>()) : null;
        if (device is null && known is null && said.Length == 0)
        {
            device = Inside(complaint, notes.Of<Device>());
            known = device is null ? Inside(complaint, notes.Of<DeviceClass>()) : null;
        }

        return new(device?.Name ?? (said.Length > 0 ? said : known?.Name ?? "Machine not named"), device, notes.Find<DeviceClass>(device?.Class) ?? known);
    }

    private static T? Inside<T>(string text, IEnumerable<T> notes) where T : Note
    {
        var words = Plain(text);
        return notes
            .SelectMany(n => Names(n).Select(name => (Note: n, Name: Plain(name))))
            .Where(n => n.Name.Length > 2 && words.Contains(n.Name, StringComparison.Ordinal))
            .OrderByDescending(n => n.Name.Length).ThenBy(n => n.Note.Id, StringComparer.Ordinal)
            .Select(n => n.Note)
            .FirstOrDefault();
    }

    private static IEnumerable<string> Names(Note note) =>
        note is Device { Model: { } model } ? [note.Name, model, .. note.Also] : [note.Name, .. note.Also];

    /// <summary>Lower case, every run of other signs one blank, blanks round it: whole words compare as whole words.</summary>
    private static string Plain(string text) =>
        " " + string.Join(' ', new string([.. text.ToLowerInvariant().Select(c => char.IsLetterOrDigit(c) ? c : ' ')]).Split(' ', StringSplitOptions.RemoveEmptyEntries)) + " ";
}
