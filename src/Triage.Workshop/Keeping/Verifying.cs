using System.Collections.Immutable;
using Triage.Notes;
using Triage.Workshop.Books;

namespace Triage.Workshop.Keeping;

/// <summary>
/// Every file of a book held against what the ledger says of it. A file that somebody edited is no damage: it is said once, and is from then
/// on what the ledger says. What is damaged, missing or shorter is said until it is mended, or accepted as it is.
/// </summary>
public static class Verifying
{
    /// <param name="accept">Take every file as it is now for right.</param>
    public static VerifyResult Verify(BookSource book, TimeProvider clock, bool accept = false, IProgress<int>? progress = null, CancellationToken stop = default)
    {
        try
        {
            var folder = new BookFolder(book, clock);
            var seen = new Dictionary<string, Seen>(StringComparer.Ordinal);
            Look(book, folder.Ledger, seen, progress, stop);
            VerifyResult? result = null;
            var refused = folder.Quiet(() =>
            {
                // what changed while the rest was looked at
                Look(book, folder.Ledger, seen, null, stop);
                var found = new Findings(book, folder.Ledger.Read(), seen);
                result = found.Result;
                if (accept || book.Writable)
                    folder.Ledger.Replace(accept ? seen.Values.Select(s => s.Now) : found.Ledger);
            });
            return refused is null ? result! : new() { Refused = refused };
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new() { Refused = KeepingTexts.CannotLook(book.Folder, e) };
        }
    }

    private static void Look(BookSource book, Ledger ledger, Dictionary<string, Seen> seen, IProgress<int>? progress, CancellationToken stop)
    {
        var there = BookFiles.In(book.Folder).Paths.Where(p => !p.Split('/').Any(s => s.StartsWith('.'))).ToHashSet(StringComparer.Ordinal);
        foreach (var gone in seen.Keys.Where(p => !there.Contains(p)).ToList())
            seen.Remove(gone);
        foreach (var path in there.Where(p => !seen.TryGetValue(p, out var known) || !known.IsStillThere(book.Folder)))
        {
            stop.ThrowIfCancellationRequested();
            try
            {
                seen[path] = Seen.At(book, ledger, path);
            }
            catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
            {
                seen.Remove(path);
            }

            progress?.Report(seen.Count);
        }
    }
}

/// <summary>What was found.</summary>
public sealed record VerifyResult
{
    public int Files { get; init; }

    public long Bytes { get; init; }

    /// <summary>Files that the ledger did not know yet.</summary>
    public int New { get; init; }

    /// <summary>Files that somebody edited, and that read well: no damage.</summary>
    public ImmutableArray<string> Edited { get; init; } = [];

    /// <summary>Notes that lie at another place than before.</summary>
    public ImmutableArray<string> Moved { get; init; } = [];

    /// <summary>What is damaged, missing or shorter than it was, by path.</summary>
    public ImmutableArray<Problem> Damage { get; init; } = [];

    /// <summary>Some of it can be accepted as it is; what is named and not there cannot.</summary>
    public bool Acceptable { get; init; }

    public Refusal? Refused { get; init; }
}
