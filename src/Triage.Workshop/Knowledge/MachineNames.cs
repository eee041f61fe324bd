using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Search.Words;

namespace Triage.Workshop.Knowledge;

/// <summary>What machine somebody means.</summary>
/// <param name="Said">The words given for it; empty when only the complaint can tell.</param>
internal sealed record Machine(string Said, Device? Device, DeviceClass? Class)
{
    /// <summary>The model's name, else the words as given, else the name of its kind.</summary>
    public string Name => Device?.Name ?? (Said.Length > 0 ? Said : Class?.Name ?? "Machine not named");

    /// <summary>What the words can mean where one name is used for several; then neither device nor class is known.</summary>
    public ImmutableArray<string> CanBe { get; init; } = [];
}

/// <summary>Finds the device or class that words name.</summary>
internal static class MachineNames
{
    /// <summary>
    /// By id, by name or other name, by a name inside the words given, then by one inside the complaint: one called "my"
    /// or "this" before others ("the keyboard of my laptop"), then the one named first, the longest of those that begin at one word.
    /// </summary>
    public static Machine Resolve(string machine, string complaint, Notebook notes)
    {
        var said = machine.Trim();
        if (Meant<Device>(said, complaint, notes) is [var device, ..])
            return new(said, device, notes.Find<DeviceClass>(device.Class));
        return Meant<DeviceClass>(said, complaint, notes) switch
        {
            [var known] => new(said, null, known),
            var kinds => new(said, null, null) { CanBe = [.. kinds.Select(c => c.Name)] },
        };
    }

    /// <summary>Whether the piece of a complaint only says what machine it is.</summary>
    public static bool OnlyNames(Machine machine, Piece piece)
    {
        var names = new Note?[] { machine.Device, machine.Class }.OfType<Note>().SelectMany(Names).SelectMany(WordsOf).ToHashSet();
        return WordsOf(piece.Words).All(names.Contains);
    }

    private static ImmutableArray<T> Meant<T>(string said, string complaint, Notebook notes) where T : Note =>
        said.Length == 0 ? Named(complaint, notes.Of<T>())
        : notes.Find<T>(said) is { } note ? [note]
        : Named(said, notes.Of<T>());

    private static ImmutableArray<T> Named<T>(string text, IEnumerable<T> notes) where T : Note
    {
        var words = Plain(text);
        return
        [
            .. notes
                .SelectMany(note => Names(note).Select(name => (Note: note, Name: Plain(name))))
                .Where(n => n.Name.Length > 3)
                .Select(n => (n.Note, n.Name, At: words.IndexOf(n.Name, StringComparison.Ordinal)))
                .Where(n => n.At >= 0)
                .GroupBy(n => (Owned: Owned.Any(o => words.AsSpan(0, n.At).EndsWith(o)), n.At, n.Name.Length))
                .OrderByDescending(g => g.Key.Owned).ThenBy(g => g.Key.At).ThenByDescending(g => g.Key.Length)
                .FirstOrDefault()?.Select(n => n.Note).Distinct().OrderBy(n => n.Id, StringComparer.Ordinal) ?? Enumerable.Empty<T>(),
        ];
    }

    private static readonly string[] Owned = [" my", " this", " our", " his", " her", " their"];

    private static IEnumerable<string> Names(Note note) =>
        note is Device { Model: { } model } ? [note.Name, model, .. note.Also] : [note.Name, .. note.Also];

    private static IEnumerable<string> WordsOf(string text) => Plain(text).Split(' ', StringSplitOptions.RemoveEmptyEntries);

    /// <summary>Lower case, every run of other signs one blank, blanks round it: whole words compare as whole words.</summary>
    private static string Plain(string text) =>
        " " + string.Join(' ', new string([.. text.ToLowerInvariant().Select(c => char.IsLetterOrDigit(c) ? c : ' ')]).Split(' ', StringSplitOptions.RemoveEmptyEntries)) + " ";
}
