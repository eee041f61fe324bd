using System.Collections.Immutable;
using System.Text;
using Triage.Notes;
using Triage.Notes.Files;
using Triage.Notes.Kinds;
using Triage.Notes.Parsing;
using Triage.Notes.Writing;
using Triage.Workshop.Books;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Exchange.Share;

/// <summary>One's own book as it may be given out: which files, with what in them.</summary>
internal sealed class Handout
{
    private static readonly string[] Fields = ["owner", "serial"];

    private readonly string book;
    private readonly SharedNames names;
    private readonly List<(string Path, byte[] Bytes)> notes = [];
    private readonly List<(string Path, Func<byte[]> Bytes)> files = [];
    private readonly HashSet<string> named = new(StringComparer.Ordinal);
    private readonly List<LeftOut> leftOut = [];
    private readonly List<Replacement> replaced = [];
    private int jobs, openJobs, owners, serials, stripped;

    private Handout(string book, SharedNames names) => (this.book, this.names) = (book, names);

    public IEnumerable<(string Path, Func<byte[]> Bytes)> Files => notes.Select(n => (n.Path, new Func<byte[]>(() => n.Bytes))).Concat(files).OrderBy(f => f.Path, StringComparer.Ordinal);

    public ShareResult Result => new()
    {
        Notes = notes.Count,
        Jobs = jobs,
        OpenJobs = openJobs,
        Owners = owners,
        Serials = serials,
        Pictures = files.Count,
        Stripped = stripped,
        Replaced = [.. replaced],
        LeftOut = [.. leftOut],
    };

    public static Handout Of(BookSource own, bool withOpenJobs, CancellationToken stop)
    {
        var owners = BookReader.Read(own.Name, own.Folder).Notes.Select(n => (n as Job)?.Owner).OfType<string>().ToList();
        var handout = new Handout(own.Folder, new(owners.SelectMany(PrivateWords.Parts)));
        var words = new PrivateWords(owners);
        foreach (var path in BookReader.Paths(own.Folder, own.Folder).Order(StringComparer.Ordinal))
        {
            stop.ThrowIfCancellationRequested();
            var reading = BookReader.ReadFile(own.Name, own.Folder, path);
            if (reading.Note is not { } note || !reading.Text.Editable)
                handout.leftOut.Add(new(reading.Place.Path, reading.IsNote ? reading.Problems.Select(p => p.ToString()).FirstOrDefault("it cannot be edited safely") : "no note: it has no front matter"));
            else if (note is Job { IsOpen: true } && !withOpenJobs)
                handout.openJobs++;
            else
                handout.Note(note, reading.Text, words);
        }

        foreach (var file in OtherFiles(own.Folder))
        {
            stop.ThrowIfCancellationRequested();
            handout.Other(file);
        }

        return handout;
    }

    private void Note(Note note, NoteText text, PrivateWords words)
    {
        var job = note as Job;
        foreach (var field in job is null ? [] : Fields)
            text = text.Remove([field]);
        var found = new List<string>();
        var content = words.Replaced(Renamed(note, text.Content), job?.Owner, job?.Serial, found.Add);
        var bytes = Encoding.UTF8.GetBytes(content);
        if (NoteReader.Read("", note.Place.Path, bytes).Note is not { } after || after.Id != note.Id)
        {
            leftOut.Add(new(note.Place.Path, "it could not be read any more once the private words were replaced"));
            return;
        }

        replaced.AddRange(found.Select(f => new Replacement(note.Place.Path, f)));
        notes.Add((Given(note.Place.Path), bytes));
        jobs += job is null ? 0 : 1;
        owners += job?.Owner is null ? 0 : 1;
        serials += job?.Serial is null ? 0 : 1;
        named.UnionWith(Named(note));
    }

    /// <summary>The name to give a file out under; that it was changed is listed.</summary>
    private string Given(string path)
    {
        var given = names.Of(path);
        if (given != path)
            replaced.Add(new(given, path));
        return given;
    }

    /// <summary>The text with the names that its files are given out under.</summary>
    private string Renamed(Note note, string text) =>
        NamedFiles.Of(note).Distinct(StringComparer.Ordinal).Where(f => names.Of(f) != f).OrderByDescending(f => f.Length)
            .Aggregate(text, (t, f) => t.Replace(f, names.Of(f), StringComparison.Ordinal).Replace(Uri.EscapeDataString(f).Replace("%2F", "/", StringComparison.Ordinal), names.Of(f), StringComparison.Ordinal));

    /// <summary>Files that a note names: photos, drawings, and links in its text; from the book or from the note's folder.</summary>
    private static IEnumerable<string> Named(Note note)
    {
        var within = Path.GetDirectoryName(note.Place.Path) ?? "";
        return NamedFiles.Of(note).SelectMany(f => new[] { f, Path.Combine(within, f) }).Select(Flat);
    }

    private static string Flat(string path) => Path.GetRelativePath("/", Path.GetFullPath(path.TrimStart('/'), "/")).Replace('\\', '/');

    private void Other(string path)
    {
        if (!named.Contains(path))
        {
            leftOut.Add(new(path, "no note that is given out names it"));
            return;
        }

        var bytes = InBook.ReadAll(Path.Combine(book, path));
        if (Pictures.Stripped(bytes) is not { } bare)
        {
            leftOut.Add(new(path, "not a sound photo (JPEG, PNG), so nobody knows what it tells"));
            return;
        }

        stripped += bare.Length < bytes.Length ? 1 : 0;
        files.Add((Given(path), () => Pictures.Stripped(InBook.ReadAll(Path.Combine(book, path)))!));
    }

    private static IEnumerable<string> OtherFiles(string folder) =>
        Directory.EnumerateFiles(folder, "*", new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.ReparsePoint })
            .Select(f => Path.GetRelativePath(folder, f).Replace('\\', '/'))
            .Where(f => !f.Split('/').Any(s => s.StartsWith('.')) && !f.EndsWith(".md", StringComparison.OrdinalIgnoreCase)).Order(StringComparer.Ordinal);
}
