using System.Text;
using System.Text.RegularExpressions;
using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Exchange.Importing;

/// <summary>What is there before a table is brought in: ids of all notes, and the notes that are no jobs.</summary>
/// <param name="JobIds">Ids of jobs.</param>
internal sealed partial record ExistingNotes(HashSet<string> JobIds, List<Note> Knowledge)
{
    private const int Head = 2048;

    private static readonly EnumerationOptions NotHidden = new() { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.Hidden | FileAttributes.ReparsePoint };

    /// <summary>Of a jobs' note only the head is looked at: there may be many.</summary>
    public static ExistingNotes In(string folder, Notebook? open)
    {
        var existing = new ExistingNotes(new(StringComparer.Ordinal), []);
        foreach (var note in open?.All ?? [])
            existing.Add(note);
        if (Directory.Exists(folder))
        {
            foreach (var file in Directory.EnumerateFiles(folder, "*.md", NotHidden))
                existing.AddFile(folder, file);
        }

        return existing;
    }

    private void AddFile(string folder, string file)
    {
        if (JobId(file) is { } id)
            JobIds.Add(id);
        else if (BookReader.ReadFile("", folder, Path.GetRelativePath(folder, file)).Note is { } note)
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
        using var handle = File.OpenHandle(file);
        Span<byte> bytes = stackalloc byte[Head];
        var head = Encoding.UTF8.GetString(bytes[..RandomAccess.Read(handle, bytes, 0)]);
        return IsJob().IsMatch(head) && Id().Match(head) is { Success: true } id ? id.Groups[1].Value : null;
    }

    [GeneratedRegex(@"^kind: job\r?$", RegexOptions.Multiline)]
    private static partial Regex IsJob();

    [GeneratedRegex(@"^id: ""?([a-z0-9-]+)""?\r?$", RegexOptions.Multiline)]
    private static partial Regex Id();
}
