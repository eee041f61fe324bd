using System.Buffers.Binary;
using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Notes.Linting;
using Triage.Notes.Parsing;
using Triage.Search.Indexing;
using Triage.Workshop.Books;

namespace Triage.Workshop.Knowledge;

/// <summary>All open books at one moment, in the order in which they were given.</summary>
internal sealed record OpenBooks(ImmutableArray<OpenBook> Books)
{
    public OpenBook this[BookSource source] => Books.First(b => b.Source == source);

    public OpenBooks With(OpenBook book) => new([.. Books.Select(b => b.Source == book.Source ? book : b)]);

    /// <summary>All notes that claim an id, in whatever book.</summary>
    public ImmutableArray<Note> Claiming(string id) => [.. Books.SelectMany(b => b.Index.Claiming(id))];

    public Notebook Notebook => Notebook.Of(Books.SelectMany(b => b.Index.Readings).Select(r => r.Note).OfType<Note>());

    /// <summary>Tells apart any two states of what learning rests on: all files but those of open jobs, with the books' names and trust.</summary>
    public UInt128 Fingerprint
    {
        get
        {
            using var all = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
            foreach (var book in Books)
            {
                all.AppendData(Encoding.UTF8.GetBytes($"{book.Source.Name}\n{book.Source.Trust}\n"));
                foreach (var path in book.Index.Readings.Where(r => r.Note is not Job { Outcome: null }).Select(r => r.Place.Path).Order(StringComparer.Ordinal))
                    all.AppendData(Encoding.UTF8.GetBytes($"{path}\n{book.Fingerprints[path]:x}\n"));
            }

            return BinaryPrimitives.ReadUInt128BigEndian(all.GetHashAndReset());
        }
    }

    /// <summary>Everything that is wrong with the notes, by themselves and together.</summary>
    public IEnumerable<Problem> Problems => Linter.Check([.. Books.Select(b => b.Index.ToBook())]).SelectMany(b => b.Problems);

    /// <summary>Photos and drawings that are not there, as it is on disk now.</summary>
    public IEnumerable<Problem> MissingFiles => Books.SelectMany(b => Knowledge.MissingFiles.Of(b.Index.Readings.Select(r => r.Note).OfType<Note>(), b.Source.Folder));

    /// <summary>What is being saved just now.</summary>
    public IEnumerable<Problem> BeingSaved => Books.SelectMany(b => b.BeingSaved.Keys).Order(StringComparer.Ordinal)
        .Select(path => new Problem(path, 0, 0, Severity.Hint, "The file is being saved just now: what it said before counts until it has been left alone for a second.", ""));

    public ImmutableArray<NoteReading> Readings => [.. Books.SelectMany(b => b.Index.Readings)];

    /// <summary>What is found of a note; one that could not be read or shares its id is found under its place.</summary>
    public static IndexedNote ForSearch(NoteReading reading, Notebook notes, Mishaps mishaps) => reading.Note is { } note ? ForSearch(note, notes, mishaps) : Unread(reading);

    public static IndexedNote ForSearch(Note note, Notebook notes, Mishaps mishaps)
    {
        var words = mishaps.Or(note.Place.Path, "looking for its words", () => IndexedNote.From(note, notes.Find<Note>), _ => IndexedNote.Unreadable(note.Place.Path, note.Body));
        return ReferenceEquals(notes.Find<Note>(note.Id), note) ? words : words with { Id = IdAt(note.Place) };
    }

    public static IndexedNote Unread(NoteReading reading) =>
        IndexedNote.Unreadable(reading.Place.Path, reading.Text.Content) with { Id = IdAt(reading.Place) };

    /// <summary>Ids of the notes that changed and of those found by their words: a job is found by the names of a test, and of what that reveals.</summary>
    public IReadOnlySet<string> NamedIn(ChangedNotes changed)
    {
        var named = changed.Names.ToHashSet(StringComparer.Ordinal);
        for (var step = 0; step < 2; step++)
            named.UnionWith(Books.SelectMany(b => b.Index.Readings).Select(r => r.Note).OfType<Note>()
                .Where(n => n.References.Any(r => named.Contains(r.Id))).Select(n => n.Id).ToList());
        return named;
    }

    /// <summary>Where a note is filed in the search when its id is not its own.</summary>
    public static string IdAt(NotePlace place) => $"{place.Book}/{place.Path}";

    /// <summary>Why a note that is there under this id cannot be used; null when there is none.</summary>
    public (NotePlace Place, string Why)? Unusable(string id)
    {
        if (Claiming(id) is [var one, var other, ..])
            return (one.Place, NoteProblems.TwoNotesOneId(id, other.Place.Path).What);
        var unread = Books.SelectMany(b => b.Index.Readings).FirstOrDefault(r => r.Note is null && Names(r, id));
        return unread is null ? null : (unread.Place, unread.Problems.OrderByDescending(p => p.Severity).First().What);
    }

    private static bool Names(NoteReading reading, string id) =>
        reading.Text.Fields?.Find("id")?.Value is YamlScalar said ? said.Text == id : Path.GetFileNameWithoutExtension(reading.Place.Path) == id;
}
