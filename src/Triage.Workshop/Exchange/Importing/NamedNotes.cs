using Triage.Notes.Kinds;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Exchange.Importing;

/// <summary>
/// The notes that names in a table stand for: those that are there, else new ones, in the order in which the table names them.
/// The same table gives the same ids.
/// </summary>
internal sealed class NamedNotes
{
    private readonly string prefix;
    private readonly Func<string, bool> isJob;
    private readonly HashSet<string> kept = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Note> byId = new(StringComparer.Ordinal);
    private readonly Dictionary<(Type Kind, string Name), Note> byName = [];
    private readonly List<Note> fresh = [];
    private readonly HashSet<Note> met = new(ReferenceEqualityComparer.Instance);

    /// <param name="isJob">Whether a job has this id.</param>
    public NamedNotes(IEnumerable<Note> existing, string prefix, Func<string, bool> isJob)
    {
        (this.prefix, this.isJob) = (prefix, isJob);
        foreach (var note in existing)
        {
            byId.TryAdd(note.Id, note);
            foreach (var name in Names(note))
                byName.TryAdd(Key(note.GetType(), name), note);
        }
    }

    /// <summary>New notes, oldest first.</summary>
    public IReadOnlyList<Note> New => fresh;

    /// <summary>Notes of the open books that the table names, by id.</summary>
    public IEnumerable<Note> Met => met.Except(fresh, ReferenceEqualityComparer.Instance).OfType<Note>().OrderBy(n => n.Id, StringComparer.Ordinal);

    public bool IsTaken(string id) => byId.ContainsKey(id) || kept.Contains(id);

    /// <summary>Keeps an id for a note that is made last.</summary>
    public void Keep(string id) => kept.Add(id);

    public T? WithId<T>(string id) where T : Note => Seen(byId.GetValueOrDefault(id) as T);

    public T? Known<T>(string name) where T : Note => Seen(byName.GetValueOrDefault(Key(typeof(T), name)) as T);

    /// <summary>The note of this kind and name, made if there is none.</summary>
    public T Named<T>(string name, Func<string, T> make) where T : Note => Known<T>(name) ?? Add(name, make(FreeId(name)));

    public T Add<T>(string name, T note) where T : Note
    {
        byId[note.Id] = note;
        byName[Key(typeof(T), name)] = note;
        fresh.Add(note);
        return note;
    }

    public string FreeId(string name)
    {
        var id = prefix + NoteIds.From(name, "unnamed");
        var free = id;
        for (var n = 2; IsTaken(free) || isJob(free); n++)
            free = FormattableString.Invariant($"{id}-{n}");
        return free;
    }

    private T? Seen<T>(T? note) where T : Note
    {
        if (note is not null)
            met.Add(note);
        return note;
    }

    private static (Type, string) Key(Type kind, string name) => (kind, name.Trim().ToUpperInvariant());

    private static IEnumerable<string> Names(Note note) =>
        note is Device { Model: { } model } ? [note.Name, model, .. note.Also] : [note.Name, .. note.Also];
}
