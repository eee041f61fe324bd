using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using Triage.Notes;
using Triage.Notes.Files;

namespace Triage.Workshop.Books;

/// <summary>
/// Texts of people that found no place in a note, in <c>.bench/kept</c>: versions that were refused, and what an editor went on writing into a
/// file that a step had replaced. Never read as notes, never given out; the oldest go when there are too many.
/// </summary>
internal sealed class KeptTexts(string book, TimeProvider clock)
{
    /// <summary>How many are kept at most.</summary>
    public const int Most = 200;

    private const string Place = ".bench/kept";

    /// <summary>How long an editor may go on writing into a file that has been replaced.</summary>
    private static readonly TimeSpan Watched = TimeSpan.FromSeconds(10);

    private readonly ConcurrentQueue<string> untold = new();

    /// <summary>Kept texts, relative to the book, oldest first.</summary>
    public ImmutableArray<string> All => Folder is { } folder && Directory.Exists(folder)
        ? [.. Directory.EnumerateFiles(folder).Select(f => Path.GetFileName(f)).Where(n => !n.StartsWith('.')).OrderBy(n => File.GetLastWriteTimeUtc(Path.Combine(folder, n))).Select(n => $"{Place}/{n}")]
        : [];

    /// <summary>That there are kept texts is worth knowing until somebody has gone through them.</summary>
    public IEnumerable<Problem> Problems => All.Select(path => new Problem(path, 0, 0, Severity.Hint,
        "This text found no place in its note: the note had changed meanwhile, or was replaced while an editor wrote into it.", "Enter in the note what is missing there, then delete this file."));

    private string? Folder => InBook.At(book, Place);

    /// <summary>What was kept since somebody was last told.</summary>
    public IEnumerable<string> Told()
    {
        while (untold.TryDequeue(out var path))
            yield return path;
    }

    /// <summary>Keeps a text that was made from an older state of its note.</summary>
    public Refusal Refused(string path, ReadOnlyMemory<byte> bytes, Disk disk)
    {
        var kept = FreeName(Path.GetFileNameWithoutExtension(path));
        WholeFile.Write(kept, bytes, () => true, disk);
        Bound();
        return WorkshopRefusals.ChangedMeanwhile(path, Relative(kept));
    }

    /// <summary>Gives a file that is about to be replaced a second name, so that nothing that is still being written into it is lost.</summary>
    /// <param name="bytes">What it holds.</param>
    /// <returns>The second name; null where the file system gives none.</returns>
    public string? Hold(string path, ReadOnlySpan<byte> bytes)
    {
        if (Folder is not { } folder || OperatingSystem.IsWindows())
            return null;
        Directory.CreateDirectory(folder);
        var name = Path.Combine(folder, $".{TimeProvider.System.GetUtcNow().UtcTicks}.{Digest(bytes)}.{Path.GetFileNameWithoutExtension(path)}");
        return Posix.Link(Path.Combine(book, path), name) ? name : null;
    }

    /// <summary>Looks right after the replacing: an editor's text that came in between is kept, and otherwise looked at again later.</summary>
    public void Look(string? held, bool replaced)
    {
        if (held is null)
            return;
        if (!replaced)
            File.Delete(held);
        else if (!IsAsItWas(held))
            Keep(held);
    }

    /// <summary>Lets go of what nobody wrote into any more, and keeps the rest. Only under the folder's lock.</summary>
    public void Settle()
    {
        if (Folder is not { } folder || !Directory.Exists(folder))
            return;
        foreach (var held in Directory.EnumerateFiles(folder, ".*").Where(IsOld).ToList())
        {
            if (IsAsItWas(held))
                File.Delete(held);
            else
                Keep(held);
        }
    }

    /// <summary>Forgets what was kept of a note.</summary>
    public void Erase(string path)
    {
        var stem = Path.GetFileNameWithoutExtension(path);
        foreach (var file in Folder is { } folder && Directory.Exists(folder) ? Directory.GetFiles(folder) : [])
        {
            if (Path.GetFileName(file) is var name && (name.StartsWith(stem + ".", StringComparison.Ordinal) || name.StartsWith('.') && name.EndsWith("." + stem, StringComparison.Ordinal)))
                File.Delete(file);
        }
    }

    private void Keep(string held)
    {
        var kept = FreeName(Path.GetFileName(held).Split('.', 4)[3]);
        File.Move(held, kept);
        untold.Enqueue(Relative(kept));
        Bound();
    }

    private void Bound()
    {
        foreach (var path in All.SkipLast(Most))
            File.Delete(Path.Combine(book, path));
    }

    private static bool IsOld(string held) =>
        Path.GetFileName(held).Split('.', 4) is [_, var ticks, _, _] && long.TryParse(ticks, CultureInfo.InvariantCulture, out var at)
        && (TimeProvider.System.GetUtcNow() - new DateTimeOffset(at, TimeSpan.Zero)).Duration() > Watched;

    private static bool IsAsItWas(string held) => Digest(InBook.ReadAll(held)) == Path.GetFileName(held).Split('.', 4)[2];

    private static string Digest(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes)[..8]);

    private string Relative(string file) => Path.GetRelativePath(book, file).Replace('\\', '/');

    private string FreeName(string stem)
    {
        var name = $"{stem}.{clock.GetUtcNow().UtcDateTime.ToString("yyyyMMdd-HHmmss-fff", CultureInfo.InvariantCulture)}";
        var free = Path.Combine(book, Place, $"{name}.md");
        for (var n = 2; File.Exists(free); n++)
            free = Path.Combine(book, Place, FormattableString.Invariant($"{name}-{n}.md"));
        return free;
    }
}
