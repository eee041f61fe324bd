using System.Collections.Immutable;
using System.Collections.Concurrent;
using System.IO.Enumeration;
using Triage.Notes.Files;
using Triage.Notes.Kinds;
using Triage.Notes.Linting;
using Triage.Notes.Parsing;

namespace Triage.Notes;

/// <summary>Reads the notes of a folder: every *.md below it, except in dot-folders and behind links.</summary>
public static class BookReader
{
    /// <summary>One book by itself. What it says of other books' notes is left for <see cref="Linter.Check"/>.</summary>
    /// <exception cref="DirectoryNotFoundException">There is no such folder.</exception>
    public static Book Read(string name, string folder) => ReadIndex(name, folder).ToBook();

    /// <summary>Books that refer to one another, checked together.</summary>
    public static ImmutableArray<Book> ReadAll(IEnumerable<(string Name, string Folder)> books) =>
        Linter.Check([.. books.Select(b => Read(b.Name, b.Folder))]);

    /// <summary>One book by path, to be kept up to date file by file.</summary>
    /// <exception cref="DirectoryNotFoundException">There is no such folder.</exception>
    public static BookIndex ReadIndex(string name, string folder)
    {
        var readings = new ConcurrentBag<NoteReading>();
        Parallel.ForEach(Paths(folder, folder), path => readings.Add(ReadFile(name, folder, path)));
        return BookIndex.Of(name, readings);
    }

    /// <summary>Files of a book's folder, or of one below it, that are read as notes: relative to the book, with forward slashes.</summary>
    /// <exception cref="DirectoryNotFoundException">There is no such folder.</exception>
    public static IEnumerable<string> Paths(string folder, string below) =>
        Files(below).Select(file => Path.GetRelativePath(folder, file).Replace('\\', '/'));

    /// <summary>One file of a book. A file that cannot be opened gives a problem.</summary>
    /// <param name="path">Relative to the folder, with forward slashes.</param>
    public static NoteReading ReadFile(string name, string folder, string path)
    {
        var place = new NotePlace(name, path);
        try
        {
            return ReadOpened(place, Path.Combine(folder, path));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return NoteReader.Refused(place, NoteProblems.CannotOpen(Reason(e)), default);
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            // whatever is in one note, it must not stop the others
            return NoteReader.Refused(place, NoteProblems.Unforeseen(e.GetType().Name), default);
        }
    }

    private static string Reason(Exception e) => e switch
    {
        FileNotFoundException or DirectoryNotFoundException => "it is gone",
        UnauthorizedAccessException => "permission denied",
        _ => e.Message,
    };

    private static NoteReading ReadOpened(NotePlace place, string file)
    {
        using var stream = InBook.Open(file);
        var limit = YamlLimits.Default.Bytes;
        var bytes = new byte[Math.Min(stream.Length, limit + 1L)];
        var length = stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
        return length > limit
            ? NoteReader.TooLarge(place, stream.Length, limit, bytes)
            : NoteReader.Read(place.Book, place.Path, bytes.AsMemory(0, length));
    }

    private static FileSystemEnumerable<string> Files(string folder) =>
        new(folder, (ref FileSystemEntry entry) => entry.ToFullPath(), new EnumerationOptions { RecurseSubdirectories = true, IgnoreInaccessible = true })
        {
            ShouldIncludePredicate = (ref FileSystemEntry entry) =>
                !entry.IsDirectory && !IsLink(ref entry) && !IsHidden(ref entry) && entry.FileName.EndsWith(".md", StringComparison.OrdinalIgnoreCase),
            ShouldRecursePredicate = (ref FileSystemEntry entry) => !IsLink(ref entry) && !IsHidden(ref entry),
        };

    private static bool IsLink(ref FileSystemEntry entry) => entry.Attributes.HasFlag(FileAttributes.ReparsePoint);

    private static bool IsHidden(ref FileSystemEntry entry) => entry.FileName.StartsWith('.');
}
