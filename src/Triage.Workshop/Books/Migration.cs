using System.Collections.Immutable;
using System.Globalization;
using Triage.Notes;
using Triage.Notes.Files;
using Triage.Notes.Parsing;
using Triage.Notes.Writing;

namespace Triage.Workshop.Books;

/// <summary>Notes of an older format written in the present one: of each only what has to change.</summary>
public static class Migration
{
    /// <summary>What would change.</summary>
    public static MigratedBook Preview(BookSource book)
    {
        var read = BookReader.Paths(book.Folder, book.Folder).Order(StringComparer.Ordinal).Select(path => BookReader.ReadFile(book.Name, book.Folder, path)).ToList();
        return new(book.Name, [.. read.Where(IsOlder).Select(Migrated)], [.. read.Where(r => r.IsNote && r.Note is null).Select(Left)]);
    }

    /// <summary>Copies the notes that change to a folder beside the book, then changes them; those of a killed run are changed by the next.</summary>
    public static MigratedBook Write(BookSource book, TimeProvider clock)
    {
        var found = Preview(book);
        if (found.Notes.IsEmpty)
            return found;
        var folder = new BookFolder(book, clock);
        try
        {
            var backup = BackUp(book, found.Notes, clock);
            var refused = found.Notes.Select(n => folder.Change(n.Path, bytes => Changed(book.Name, n.Path, bytes)?.Bytes.ToArray())).FirstOrDefault(r => r is not null);
            return found with { Backup = backup, Refused = refused };
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return found with { Refused = WorkshopRefusals.CannotWrite(book.Folder, e) };
        }
    }

    private static string BackUp(BookSource book, IEnumerable<MigratedNote> notes, TimeProvider clock)
    {
        var stamp = clock.GetUtcNow().UtcDateTime.ToString("yyyyMMdd-HHmmss", CultureInfo.InvariantCulture);
        var backup = $"{Path.TrimEndingDirectorySeparator(Path.GetFullPath(book.Folder))}-before-format-{NoteFormat.Current}-{stamp}";
        foreach (var note in notes)
        {
            var copy = Path.Combine(backup, note.Path);
            WholeFile.Write(copy, InBook.ReadAll(Path.Combine(book.Folder, note.Path)), () => true);
        }

        return backup;
    }

    private static bool IsOlder(NoteReading reading) => reading.Note is { Format: < NoteFormat.Current };

    private static MigratedNote Migrated(NoteReading reading)
    {
        var changed = InPresentFormat(reading.Text);
        var line = changed.Fields!.Find("format")!.Key.Line;
        return new(reading.Place.Path, line, reading.Text.Fields!.Find("format") is null ? null : LineOf(reading.Text, line), LineOf(changed, line));
    }

    private static LeftNote Left(NoteReading reading)
    {
        var wrong = reading.Problems.First(p => p.Severity == Severity.Error);
        return new(reading.Place.Path, wrong.Line, $"{wrong.What} {wrong.Instead}");
    }

    private static NoteText? Changed(string book, string path, byte[] bytes) =>
        NoteReader.Read(book, path, bytes) is var reading && IsOlder(reading) ? InPresentFormat(reading.Text) : null;

    private static NoteText InPresentFormat(NoteText text) => text.Set(["format"], YamlValue.Of(NoteFormat.Current));

    private static string LineOf(NoteText text, int line) => text.Content.Split('\n')[line - 1].TrimEnd('\r');
}

/// <summary>What a migration changes, or changed, in one book.</summary>
/// <param name="Left">Notes that cannot be read, and so are left as they are.</param>
public sealed record MigratedBook(string Book, ImmutableArray<MigratedNote> Notes, ImmutableArray<LeftNote> Left)
{
    /// <summary>Folder that holds the notes as they were; null when nothing was written.</summary>
    public string? Backup { get; init; }

    /// <summary>Why it ended early; what was changed until then stays changed, and the backup holds all of it.</summary>
    public Refusal? Refused { get; init; }
}

/// <param name="Line">From 1.</param>
/// <param name="Before">The line as it was; null when there was none.</param>
public sealed record MigratedNote(string Path, int Line, string? Before, string After);

/// <param name="Line">From 1; 0 when the whole file is meant.</param>
/// <param name="Why">What is wrong and what to write instead.</param>
public sealed record LeftNote(string Path, int Line, string Why);
