using System.Collections.Immutable;
using System.Text;
using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Notes.Linting;
using Triage.Notes.Parsing;
using Triage.Workshop.Books;

namespace Triage.Workshop.Steps;

/// <summary>A note changed as text: checked first, and never over somebody's newer text.</summary>
public sealed class NoteEditing
{
    private const char ByteOrderMark = '\uFEFF';

    private readonly LiveBooks bench;

    internal NoteEditing(LiveBooks bench) => this.bench = bench;

    /// <summary>The note's text as it is on disk now; null when there is no such note.</summary>
    public NoteSource? Read(string id) =>
        bench.Current.Notes.Find<Note>(id) is { } note && bench.FolderOf(note.Place)?.Read(note.Place.Path) is { } bytes
            ? new(note.Place, Encoding.UTF8.GetString(bytes).TrimStart(ByteOrderMark), FileVersion.Of(bytes), bench.Writable(note.Place) is not null)
            : null;

    /// <summary>Writes the whole text. One with an error, or made from an older state of the file, is not written.</summary>
    /// <param name="version">Of the text that the person began with.</param>
    /// <param name="text">With any line ends; the file keeps its own.</param>
    public NoteSaved Save(string id, string version, string text)
    {
        if (bench.Current.Notes.Find<Note>(id) is not { } note)
            return Refuse(WorkshopRefusals.NoSuch("note", id, Nearest.To(id, bench.Current.Notes.All.Select(n => n.Id)) is { } near ? [near] : []));
        if (bench.Writable(note.Place) is not { } book)
            return Refuse(WorkshopRefusals.NotEditable(note.Place.Path, $"book “{note.Place.Book}” was opened for reading only."));
        if (book.Read(note.Place.Path) is not { } before)
            return Refuse(WorkshopRefusals.NoteGone(note.Place.Path));
        if (FileVersion.Of(before) != version)
            return Refuse(WorkshopRefusals.TextChangedMeanwhile(note.Place.Path));
        return Checked(note, note.Place, book, before, InTheFilesForm(before, text));
    }

    /// <summary>Writes a text that is sound, and leaves what is there in place otherwise.</summary>
    /// <param name="note">What the file says now; null when it cannot be read or is gone.</param>
    /// <param name="before">The file as the person saw it; null when it is gone.</param>
    internal NoteSaved Checked(Note? note, NotePlace place, BookFolder book, byte[]? before, byte[] after)
    {
        var reading = NoteReader.Read(place.Book, place.Path, after);
        if (note is not null && reading.Note is { } read && read.Id != note.Id && !read.Formerly.Contains(note.Id))
            return Refuse(WorkshopRefusals.IdChanged(note.Id, read.Id));
        ImmutableArray<Problem> problems = [.. reading.Problems.Concat(reading.Note is { } whole ? AmongOthers(note, whole) : []).OrderBy(p => (p.Line, p.Column))];
        if (reading.Note is null && problems.IsEmpty)
            return Refuse(WorkshopRefusals.NoNote(place.Path));
        if (reading.Note is null || problems.Any(p => p.Severity == Severity.Error))
            return new(null, problems);
        var refused = before is null ? book.Create(place.Path, after) : book.Replace(place.Path, before, after);
        bench.Reread(book, [place.Path]);
        return new(refused, refused is null ? problems : []);
    }

    /// <summary>What is wrong with what it names, and an id that another note has.</summary>
    private IEnumerable<Problem> AmongOthers(Note? before, Note after)
    {
        var others = bench.Current.Notes.All.Where(n => n.Id != before?.Id).ToList();
        var wrong = Linter.Check(after, new NoteIndex(others.Append(after)));
        return others.Find(n => n.Id == after.Id) is { } twin
            ? wrong.Append(new(after.Place.Path, 1, 1, Severity.Error, $"The id {after.Id} belongs to {twin.Place.Path} already.", "Give this note another."))
            : wrong;
    }

    private static byte[] InTheFilesForm(byte[] before, string text)
    {
        var old = NoteText.Of(Encoding.UTF8.GetString(before));
        var lines = text.TrimStart(ByteOrderMark).ReplaceLineEndings(old.NewLine);
        return Encoding.UTF8.GetBytes(old.Content.StartsWith(ByteOrderMark) ? ByteOrderMark + lines : lines);
    }

    private static NoteSaved Refuse(Refusal refused) => new(refused, []);
}

/// <param name="Version">Of the file, to be given back on saving.</param>
/// <param name="Writable">False when its book was opened for reading only.</param>
public sealed record NoteSource(NotePlace Place, string Text, string Version, bool Writable);

/// <summary>What became of a text.</summary>
/// <param name="Refused">Why it could not be written; null otherwise.</param>
/// <param name="Problems">What the check says of it. With an error among them it was not written.</param>
public sealed record NoteSaved(Refusal? Refused, ImmutableArray<Problem> Problems)
{
    public bool Written => Refused is null && Problems.All(p => p.Severity != Severity.Error);
}
