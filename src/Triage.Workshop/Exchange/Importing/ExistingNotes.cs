using System.Text;
using System.Text.RegularExpressions;
using Triage.Notes;
using Triage.Notes.Files;
using Triage.Notes.Kinds;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Exchange.Importing;

/// <summary>What is there before a table is brought in: ids of all notes, and the notes that are no jobs.</summary>
/// <param name="JobIds">Ids of jobs.</param>
internal sealed partial record ExistingNotes(HashSet<string> JobIds, List<Note> Knowledge)
{
    private const int Head = 2048;

    /// <summary>Of a jobs' note only the head is looked at: there may be many.</summary>
    public static ExistingNotes In(string folder, Notebook? open)
    {
        var existing = new ExistingNotes(new(StringComparer.Ordinal), []);
        foreach (var note in open?.All ?? [])
            existing.Add(note);
        if (Directory.Exists(folder))
        {
            foreach (var path in BookReader.Paths(folder, folder))
                existing.AddFile(folder, path);
        }

        return existing;
    }

    private void AddFile(string folder, string path)
    {
        if (JobId(Path.Combine(folder, path)) is { } id)
            JobIds.Add(id);
        else if (BookReader.ReadFile("", folder, path).Note is { } note)
            Add(note);
    }

    private void Add(Note note)
    {
        if (note is Job)
            JobIds.Add(note.Id);
        else
            Knowledge.Add(note);
    }

    private static string? JobId(string file)
    {
        Span<byte> bytes = stackalloc byte[Head];
        var head = Encoding.UTF8.GetString(bytes[..Begin(file, bytes)]);
        return IsJob().IsMatch(head) && Id().Match(head) is { Success: true } id ? id.Groups[1].Value : null;
    }

    /// <summary>What cannot be opened begins with nothing; reading it whole names what is wrong.</summary>
    private static int Begin(string file, Span<byte> bytes)
    {
        try
        {
            using var stream = InBook.Open(file);
            return stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return 0;
        }
    }

    [GeneratedRegex(@"^kind: job\r?$", RegexOptions.Multiline)]
    private static partial Regex IsJob();

    [GeneratedRegex(@"^id: ""?([a-z0-9-]+)""?\r?$", RegexOptions.Multiline)]
    private static partial Regex Id();
}
