using System.Collections.Immutable;

namespace Triage.Workshop.Books;

/// <summary>
/// What writing replaced, file by file, in <c>.bench/history</c>: one line for each state, the newest last, holding only what differs from
/// the state before. Kept and erased only under the folder's lock.
/// </summary>
/// <param name="aside">The book's folder for what is not a note.</param>
internal sealed class History(string aside)
{
    /// <summary>What one file's history may take: eight times the file, and never less than 64 kB. Over that, the older half goes.</summary>
    private const int Times = 8, Least = 64_000;

    private const string Ending = ".jsonl";

    private string Folder => Path.Combine(aside, "history");

    /// <summary>Files that have a history, relative to the book.</summary>
    public IEnumerable<string> Files => !Directory.Exists(Folder) ? [] :
        Directory.EnumerateFiles(Folder, "*" + Ending, SearchOption.AllDirectories).Select(f => Path.GetRelativePath(Folder, f)[..^Ending.Length].Replace('\\', '/'));

    /// <summary>The states kept of a file, the oldest first. A line that is damaged is passed over, and so is what rests on it.</summary>
    public ImmutableArray<PastState> Of(string path)
    {
        var states = ImmutableArray.CreateBuilder<PastState>();
        foreach (var kept in JsonLines.Read<KeptState>(FileOf(path)))
        {
            if (kept.After(states.LastOrDefault()) is { } state)
                states.Add(state);
        }

        return states.ToImmutable();
    }

    /// <summary>Keeps a state that is about to be replaced, unless it is the newest kept already.</summary>
    /// <param name="path">Relative to the book, and inside it.</param>
    /// <param name="note">The file itself: its history is readable by the same people.</param>
    public void Keep(string path, PastState state, string note)
    {
        var (file, kept) = (FileOf(path), Of(path));
        if (kept.LastOrDefault() is { } newest && newest.Content.Span.SequenceEqual(state.Content.Span))
            return;
        var line = JsonLines.Line(KeptState.Of(state, kept.LastOrDefault()));
        Prepare(file);
        var room = Math.Max(Least, Times * state.Content.Length);
        if (JsonLines.Append(file, line, like: note) + line.Length > room)
            WholeFile.Write(file, Newest(kept[(kept.Length / 2)..].Add(state), room), () => true);
    }

    /// <summary>Forgets what was kept of a file.</summary>
    public void Erase(string path) => File.Delete(FileOf(path));

    private string FileOf(string path) => Path.Combine(Folder, path + Ending);

    private void Prepare(string file)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        if (Path.Combine(aside, ".gitignore") is var ignored && !File.Exists(ignored))
            File.WriteAllText(ignored, "*\n");
    }

    /// <summary>As many of the newest states as the room takes, by halves; at least one.</summary>
    private static byte[] Newest(ImmutableArray<PastState> states, int room)
    {
        byte[] lines = [.. states.SelectMany((state, at) => JsonLines.Line(KeptState.Of(state, at > 0 ? states[at - 1] : null)))];
        return lines.Length <= room || states.Length == 1 ? lines : Newest(states[((states.Length + 1) / 2)..], room);
    }
}
