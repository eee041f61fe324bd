using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Notes.Parsing;

namespace Triage.Notes;

/// <summary>The files of one book by path, so that one changed file can be read again without reading the others.</summary>
public sealed record BookIndex
{
    private readonly ImmutableSortedDictionary<string, NoteReading> _readings;
    private readonly ImmutableDictionary<string, ImmutableSortedSet<string>> _pathsById;

    private BookIndex(
        string name,
        ImmutableSortedDictionary<string, NoteReading> readings,
        ImmutableDictionary<string, ImmutableSortedSet<string>> pathsById) =>
        (Name, _readings, _pathsById) = (name, readings, pathsById);

    /// <summary>Name of the book.</summary>
    public string Name { get; }

    public static BookIndex Empty(string name) => new(
        name,
        ImmutableSortedDictionary.Create<string, NoteReading>(StringComparer.Ordinal),
        ImmutableDictionary<string, ImmutableSortedSet<string>>.Empty);

    public static BookIndex Of(string name, IEnumerable<NoteReading> readings)
    {
        var notes = readings.Where(r => r.IsNote).Select(Slim).ToImmutableSortedDictionary(r => r.Place.Path, r => r, StringComparer.Ordinal);
        var paths = notes.Values
            .SelectMany(r => IdsOf(r).Select(id => (Id: id, r.Place.Path)))
            .GroupBy(p => p.Id)
            .ToImmutableDictionary(g => g.Key, g => g.Select(p => p.Path).ToImmutableSortedSet(StringComparer.Ordinal));
        return new BookIndex(name, notes, paths);
    }

    /// <summary>The book after one file was written or changed.</summary>
    public BookIndex With(NoteReading reading)
    {
        var path = reading.Place.Path;
        var without = Without(path);
        return !reading.IsNote
            ? without
            : new BookIndex(Name, without._readings.Add(path, Slim(reading)), IdsOf(reading).Aggregate(without._pathsById, (all, id) =>
                all.SetItem(id, all.GetValueOrDefault(id, ImmutableSortedSet.Create<string>(StringComparer.Ordinal)).Add(path))));
    }

    /// <summary>The book after one file was deleted.</summary>
    public BookIndex Without(string path) => !_readings.TryGetValue(path, out var old)
        ? this
        : new BookIndex(Name, _readings.Remove(path), IdsOf(old).Aggregate(_pathsById, (all, id) =>
            all[id].Count == 1 ? all.Remove(id) : all.SetItem(id, all[id].Remove(path))));

    /// <summary>The note with an id, or the one that had it formerly; null when there is none, or more than one.</summary>
    public Note? Resolve(string id)
    {
        var notes = _pathsById.GetValueOrDefault(id, []).Select(p => _readings[p].Note!).ToList();
        var named = notes.Where(n => n.Id == id).ToList();
        return (named.Count > 0 ? named : notes) is [var only] ? only : null;
    }

    /// <summary>Every note that claims an id as its own, by path; more than one is a mistake in the book.</summary>
    public IEnumerable<Note> Claiming(string id) =>
        _pathsById.GetValueOrDefault(id, []).Select(p => _readings[p].Note!).Where(n => n.Id == id);

    /// <summary>All files that are notes or want to be, by path.</summary>
    public IEnumerable<NoteReading> Readings => _readings.Values;

    /// <summary>What is at a path; null when no note is.</summary>
    public NoteReading? At(string path) => _readings.GetValueOrDefault(path);

    /// <summary>The book as it stands; notes that share an id are not among its notes but named and searchable.</summary>
    public Book ToBook()
    {
        var notes = ImmutableArray.CreateBuilder<Note>(_readings.Count);
        var problems = ImmutableArray.CreateBuilder<Problem>();
        var searchOnly = ImmutableArray.CreateBuilder<NoteReading>();
        foreach (var reading in _readings.Values)
        {
            var twin = reading.Note is { } note ? Twin(note) : null;
            problems.AddRange(reading.Problems);
            if (twin is not null)
            {
                var text = NoteProblems.TwoNotesOneId(reading.Note!.Id, twin);
                problems.Add(new Problem(reading.Place.Path, 0, 0, text.Severity, text.What, text.Instead));
            }

            if (reading.Note is null || twin is not null)
            {
                searchOnly.Add(reading);
            }
            else
            {
                notes.Add(reading.Note);
            }
        }

        return new Book(Name, notes.ToImmutable(), problems.ToImmutable()) { SearchOnly = searchOnly.ToImmutable() };
    }

    private string? Twin(Note note)
    {
        var paths = _pathsById[note.Id];
        return paths.Count == 1 ? null : paths.FirstOrDefault(p => p != note.Place.Path && _readings[p].Note!.Id == note.Id);
    }

    private static IEnumerable<string> IdsOf(NoteReading reading) => reading.Note is { } note ? note.Formerly.Append(note.Id).Distinct() : [];

    /// <summary>A note that can be used is not kept as a file too.</summary>
    private static NoteReading Slim(NoteReading reading) => reading.Note is null ? reading : reading with { Text = new NoteText() };
}
