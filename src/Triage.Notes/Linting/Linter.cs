using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Notes.Linting;

/// <summary>Checks notes against one another: ids used twice, references to nothing, circles.</summary>
public static class Linter
{
    /// <summary>
    /// The same books with what is wrong between their notes added to their problems. Notes of different books that share an id are
    /// taken out of <see cref="Book.Notes"/> and stay searchable.
    /// </summary>
    public static ImmutableArray<Book> Check(IReadOnlyList<Book> books)
    {
        ImmutableArray<Book> apart = [.. Twins.Apart(books)];
        var index = new NoteIndex(apart.SelectMany(b => b.Notes));
        var circles = Circles.Of(index).ToLookup(c => c.Place);
        return [.. apart.Select(book => WithProblems(book, index, circles))];
    }

    /// <summary>What is wrong with the references of one note.</summary>
    public static IEnumerable<Problem> Check(Note note, NoteIndex index) =>
        note.References.SelectMany(r => References.Check(note, r, index)).Concat(TwiceDefined(note, index));

    private static Book WithProblems(Book book, NoteIndex index, ILookup<NotePlace, (NotePlace Place, ProblemText Text)> circles)
    {
        var found = book.Notes.SelectMany(note =>
            Checked(note, index).Concat(circles[note.Place].Select(c => At(note.Place.Path, 0, 0, c.Text))));
        return book with { Problems = [.. book.Problems.Concat(found).OrderBy(p => p.Path, StringComparer.Ordinal).ThenBy(p => (p.Line, p.Column))] };
    }

    private static ImmutableArray<Problem> Checked(Note note, NoteIndex index)
    {
        try
        {
            return [.. Check(note, index)];
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            // whatever is in one note, the others are checked
            return [At(note.Place.Path, 0, 0, NoteProblems.Unforeseen(e.GetType().Name))];
        }
    }

    private static IEnumerable<Problem> TwiceDefined(Note note, NoteIndex index) =>
        from mend in (note as Fault)?.Mends ?? []
        where mend.Name is not null && index.DefinerOf(mend.Id) is { } definer && definer.Id != note.Id
        let at = note.References.First(r => r.Kind == ReferenceKind.Fix && r.Id == mend.Id)
        select At(note.Place.Path, at.Line, at.Column, NoteProblems.FixDefinedTwice(mend.Id, index.DefinerOf(mend.Id)!.Id));

    internal static Problem At(string path, int line, int column, ProblemText text) =>
        new(path, line, column, text.Severity, text.What, text.Instead);
}
