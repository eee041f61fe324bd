using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Workshop.Books;

namespace Triage.Workshop.Knowledge;

/// <summary>What is wrong with what a bench says of itself in its <c>bench.yaml</c>, without opening it.</summary>
public static class SettingsCheck
{
    /// <summary>The book whose file counts; null when none has one.</summary>
    public static BookSource? BookOf(IEnumerable<BookSource> books) => SettingsFile.BookOf(books);

    /// <param name="notes">Of all the books: what the file names is looked up there.</param>
    public static IEnumerable<Problem> Of(IReadOnlyCollection<BookSource> books, IEnumerable<Note> notes) =>
        SettingsFile.Of(books).AmongNotes(notes.OfType<PartClass>());
}
