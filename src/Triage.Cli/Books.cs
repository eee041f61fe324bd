using System.Collections.Immutable;
using Triage.Workshop.Books;
using Triage.Workshop.Exchange.Take;

namespace Triage.Cli;

/// <summary>Which books a command opens.</summary>
internal static class Books
{
    /// <summary>Environment variable with books as for --book, separated by semicolons.</summary>
    public const string Variable = "TRIAGE_BOOKS";

    /// <summary>Name of the book of generic knowledge, which commands never write to.</summary>
    private const string Common = "common";

    /// <param name="typed">As typed: NAME=FOLDER[:own|known|stranger] or FOLDER. None: the variable, then kb/common and kb/demo from here upwards.</param>
    /// <exception cref="RefusedException">No book, a folder that is not there, or one name twice.</exception>
    public static ImmutableArray<BookSource> Of(IReadOnlyCollection<string> typed)
    {
        var said = typed.Count > 0 ? typed
            : Environment.GetEnvironmentVariable(Variable)?.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries) is { Length: > 0 } set ? set
            : Found(Environment.CurrentDirectory);
        var books = said.Select(Read).ToList();
        if (books.GroupBy(b => b.Name).FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new RefusedException(CommandTexts.BookTwice(twice.Key));
        if (books.Find(b => !Directory.Exists(b.Folder)) is { } missing)
            throw new RefusedException(CommandTexts.NoFolder(missing));
        var home = books.FindIndex(b => b.Trust == Trust.Own && b.Name != Common);
        return [.. books.Select((book, i) => book with { Writable = i == home }), .. home < 0 ? [] : Taken(books, books[home])];
    }

    /// <summary>The one of them that is written to.</summary>
    /// <exception cref="RefusedException">None of them is one's own, and as for <see cref="Of"/>.</exception>
    public static BookSource Own(IReadOnlyCollection<string> typed) => Of(typed).FirstOrDefault(b => b.Writable) ?? throw new RefusedException(CommandTexts.NoOwnBook);

    /// <summary>Books of others that were taken beside one's own, unless they were named by hand.</summary>
    private static IEnumerable<BookSource> Taken(List<BookSource> books, BookSource own) =>
        TakenBook.Beside(own.Folder).Where(t => books.TrueForAll(b => b.Name != t.Name && b.Folder != t.Folder)).Select(t => new BookSource(t.Name, t.Folder, t.Trust));

    private static string[] Found(string from)
    {
        for (var folder = new DirectoryInfo(from); folder is not null; folder = folder.Parent)
        {
            if (Directory.Exists(Path.Combine(folder.FullName, "kb", Common)))
                return [.. new[] { Common, "demo" }.Select(name => Path.Combine(folder.FullName, "kb", name)).Where(Directory.Exists)];
        }

        throw new RefusedException(CommandTexts.NoBook(from));
    }

    private static BookSource Read(string typed)
    {
        var trust = Enum.GetValues<Trust>().Select(t => (Trust?)t).FirstOrDefault(t => typed.EndsWith($":{t}", StringComparison.OrdinalIgnoreCase));
        var rest = trust is null ? typed : typed[..typed.LastIndexOf(':')];
        var equals = rest.IndexOf('=', StringComparison.Ordinal);
        var named = equals > 0 && rest[..equals].All(c => char.IsLetterOrDigit(c) || c is '-' or '_');
        var folder = Path.GetFullPath(named ? rest[(equals + 1)..] : rest);
        return new(named ? rest[..equals] : Path.GetFileName(Path.TrimEndingDirectorySeparator(folder)), folder, trust ?? Trust.Own);
    }
}
