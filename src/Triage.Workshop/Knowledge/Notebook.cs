using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Workshop.Knowledge;

/// <summary>
/// All notes of all open books, by id. An id that two notes claim belongs to neither: both stay searchable, none is reasoned with.
/// </summary>
public sealed class Notebook
{
    private readonly ImmutableDictionary<string, Note> byId;
    private readonly ImmutableDictionary<string, string> formerly;
    private readonly Lazy<ImmutableArray<Note>> knowledge;

    private Notebook(ImmutableDictionary<string, Note> byId, ImmutableDictionary<string, string> formerly, ImmutableArray<Note>? sameKnowledge)
    {
        this.byId = byId;
        this.formerly = formerly;
        knowledge = new(() => sameKnowledge ?? [.. byId.Values.Where(n => n is not Triage.Notes.Kinds.Job).OrderBy(n => n.Id, StringComparer.Ordinal)]);
    }

    public static Notebook Empty { get; } = new(ImmutableDictionary.Create<string, Note>(StringComparer.Ordinal), ImmutableDictionary.Create<string, string>(StringComparer.Ordinal), null);

    /// <summary>Everything but jobs, by id: small, and what networks are made of.</summary>
    public ImmutableArray<Note> Knowledge => knowledge.Value;

    public IEnumerable<Note> All => byId.Values;

    public IEnumerable<Triage.Notes.Kinds.Job> Jobs => byId.Values.OfType<Triage.Notes.Kinds.Job>();

    public IEnumerable<T> Of<T>() where T : Note => Knowledge.OfType<T>();

    public IEnumerable<Mend> Mends => Of<Fault>().SelectMany(f => f.Mends);

    /// <summary>What the mend with this id is called and takes: the first that is named, others only refer to it; null when there is none.</summary>
    public Mend? Mend(string id) => Mends.FirstOrDefault(m => m.Id == id && m.Name is not null);

    /// <summary>The note with this id, or with this former id; null when there is none or it is of another kind.</summary>
    public T? Find<T>(string? id) where T : Note =>
        id is null ? null
        : byId.TryGetValue(id, out var note) || (formerly.TryGetValue(id, out var now) && byId.TryGetValue(now, out note)) ? note as T
        : null;

    /// <summary>The id that a note goes by today.</summary>
    public string Today(string id) => byId.ContainsKey(id) || !formerly.TryGetValue(id, out var now) ? id : now;

    public static Notebook Of(IEnumerable<Note> notes)
    {
        var byId = ImmutableDictionary.CreateBuilder<string, Note>(StringComparer.Ordinal);
        var formerly = ImmutableDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (var same in notes.GroupBy(n => n.Id, StringComparer.Ordinal))
        {
            if (same.Skip(1).Any())
                continue;
            var note = same.First();
            byId[note.Id] = note;
            foreach (var old in note.Formerly)
                formerly[old] = note.Id;
        }

        return new(byId.ToImmutable(), formerly.ToImmutable(), null);
    }

    /// <summary>The same notes with this one added or put in place of its older form.</summary>
    public Notebook With(Note note)
    {
        var others = Without(note.Id);
        return new(
            others.byId.Add(note.Id, note),
            others.formerly.SetItems(note.Formerly.Select(f => KeyValuePair.Create(f, note.Id))),
            note is Triage.Notes.Kinds.Job ? others.Knowledge : null);
    }

    public Notebook Without(string id) => byId.GetValueOrDefault(id) is not { } note ? this : new(
        byId.Remove(id),
        formerly.RemoveRange(note.Formerly.Where(f => formerly.GetValueOrDefault(f) == id)),
        note is Triage.Notes.Kinds.Job ? Knowledge : null);
}
