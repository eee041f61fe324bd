using System.Text.RegularExpressions;
using Triage.Notes;
using Triage.Notes.Files;
using Triage.Notes.Kinds;
using Triage.Notes.Parsing;
using Triage.Workshop.Books;

namespace Triage.Workshop.Keeping;

/// <summary>A file of the book as it was looked at.</summary>
/// <param name="Now">What the ledger would say of it.</param>
/// <param name="Note">The note it is; null when it is none, or cannot be read.</param>
/// <param name="Unreadable">Why a note cannot be read; null otherwise.</param>
/// <param name="Whole">A photo or drawing is there to its end.</param>
internal sealed partial record Seen(LedgerEntry Now, Note? Note, Problem? Unreadable, bool Whole)
{
    /// <summary>Why the file cannot be read from the disk; null when it can.</summary>
    public string? Unread { get; init; }

    public string Path => Now.Path;

    /// <summary>A photo or drawing that the bench kept under a name made of its content, and that is now another.</summary>
    public bool IsNotWhatItsNameSays => ContentName.Match(Path) is { Success: true } named && !Now.Sha256.StartsWith(named.Groups[1].Value, StringComparison.Ordinal);

    /// <exception cref="IOException">It went away meanwhile.</exception>
    public static Seen At(BookSource book, Ledger ledger, string path)
    {
        var time = ledger.TimeOf(path);
        try
        {
            var bytes = InBook.ReadAll(System.IO.Path.Combine(book.Folder, path));
            var reading = path.EndsWith(".md", StringComparison.OrdinalIgnoreCase) ? NoteReader.Read(book.Name, path, bytes) : null;
            var unreadable = reading is { Note: null, IsNote: true } ? reading.Problems.OrderByDescending(p => p.Severity).First() : null;
            return new(ledger.Entry(path, bytes, time), reading?.Note, unreadable, WholeFiles.IsWhole(path, bytes));
        }
        catch (Exception e) when (e is IOException and not (FileNotFoundException or DirectoryNotFoundException) or UnauthorizedAccessException)
        {
            return new(new(path, 0, "", time, null, null), null, null, Whole: true) { Unread = e.Message };
        }
    }

    /// <summary>Neither its length nor its time moved since it was looked at.</summary>
    public bool IsStillThere(string folder) =>
        new FileInfo(System.IO.Path.Combine(folder, Path)) is { Exists: true } file && file.Length == Now.Bytes && (DateTimeOffset)file.LastWriteTimeUtc == Now.Time;

    [GeneratedRegex(@"-([0-9a-f]{16})\.(?:jpg|png|webp|pdf)$")]
    private static partial Regex ContentName { get; }
}
