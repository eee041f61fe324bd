using Triage.Notes.Kinds;
using Triage.Notes.Parsing;

namespace Triage.Notes.Linting;

/// <summary>Notes of different books that share an id: none of them is reasoned with.</summary>
internal static class Twins
{
    public static IEnumerable<Book> Apart(IReadOnlyList<Book> books)
    {
        var places = books.SelectMany(b => b.Notes).GroupBy(n => n.Id).Where(g => g.Skip(1).Any())
            .ToDictionary(g => g.Key, g => g.Select(n => n.Place).ToList());
        return places.Count == 0 ? books : books.Select(b => Apart(b, places));
    }

    private static Book Apart(Book book, Dictionary<string, List<NotePlace>> places)
    {
        var twins = book.Notes.Where(n => places.ContainsKey(n.Id)).ToList();
        var problems = twins.Select(n => Linter.At(n.Place.Path, 0, 0, NoteProblems.TwoNotesOneId(n.Id, Other(n))));
        return book with
        {
            Notes = [.. book.Notes.Except(twins, ReferenceEqualityComparer.Instance).Cast<Note>()],
            Problems = [.. book.Problems, .. problems],
            SearchOnly = [.. book.SearchOnly, .. twins.Select(n => new NoteReading(n, [], new NoteText()) { Place = n.Place })],
        };

        string Other(Note note) => places[note.Id].First(p => p != note.Place) is var other && other.Book == book.Name
            ? other.Path
            : $"{other.Path} in {other.Book}";
    }
}
