using System.Collections.Immutable;
using System.IO.Compression;
using Triage.Workshop.Books;

namespace Triage.Workshop.Exchange.Share;

/// <summary>Gives one's own book out without owner, serial number, contact, or what photos tell beside the picture.</summary>
public static class GivingOut
{
    /// <summary>Earliest date that a zip can hold: it shall not tell when it was packed.</summary>
    private static readonly DateTimeOffset NoDate = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>Writes to a place that is not there yet; it appears whole or not at all.</summary>
    /// <param name="place">A folder, or a file that ends in .zip.</param>
    /// <param name="withOpenJobs">Give out jobs that are not closed as well.</param>
    public static ShareResult Share(BookSource own, string place, bool withOpenJobs = false, IProgress<int>? progress = null, CancellationToken stop = default)
    {
        var to = Path.TrimEndingDirectorySeparator(Path.GetFullPath(place));
        if (Path.Exists(to))
            return new() { Refused = SharingTexts.PlaceTaken(place) };
        if ((to + "/").StartsWith(Path.TrimEndingDirectorySeparator(Path.GetFullPath(own.Folder)) + "/", StringComparison.Ordinal))
            return new() { Refused = SharingTexts.InsideBook(place) };
        var half = Path.Combine(Path.GetDirectoryName(to)!, $".{Path.GetFileName(to)}.half");
        try
        {
            Remove(half);
            var handout = Handout.Of(own, withOpenJobs, stop);
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            if (to.EndsWith(".zip", StringComparison.OrdinalIgnoreCase))
            {
                Zip(handout, half, progress, stop);
                File.Move(half, to, overwrite: false);
            }
            else
            {
                Folder(handout, half, progress, stop);
                Directory.Move(half, to);
            }

            return handout.Result with { Place = to };
        }
        catch (OperationCanceledException)
        {
            Remove(half);
            throw;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new() { Refused = SharingTexts.CannotWrite(Path.GetDirectoryName(to)!, e) };
        }
    }

    private static void Folder(Handout handout, string half, IProgress<int>? progress, CancellationToken stop)
    {
        Directory.CreateDirectory(half);
        var written = 0;
        foreach (var (path, bytes) in handout.Files)
        {
            stop.ThrowIfCancellationRequested();
            var file = Path.Combine(half, path);
            WholeFile.Write(file, bytes(), () => true);
            progress?.Report(++written);
        }
    }

    private static void Zip(Handout handout, string half, IProgress<int>? progress, CancellationToken stop)
    {
        using var file = new FileStream(half, FileMode.CreateNew);
        using (var zip = new ZipArchive(file, ZipArchiveMode.Create, leaveOpen: true))
        {
            var written = 0;
            foreach (var (path, bytes) in handout.Files)
            {
                stop.ThrowIfCancellationRequested();
                var entry = zip.CreateEntry(path);
                entry.LastWriteTime = NoDate;
                using var stream = entry.Open();
                stream.Write(bytes());
                progress?.Report(++written);
            }
        }

        file.Flush(flushToDisk: true);
    }

    private static void Remove(string half)
    {
        if (Directory.Exists(half))
            Directory.Delete(half, recursive: true);
        File.Delete(half);
    }
}

/// <summary>What was given out, what was taken off it, and what stayed at home.</summary>
public sealed record ShareResult
{
    public int Notes { get; init; }

    /// <summary>Of the notes.</summary>
    public int Jobs { get; init; }

    /// <summary>Open jobs that stayed at home.</summary>
    public int OpenJobs { get; init; }

    /// <summary>Owner fields taken out.</summary>
    public int Owners { get; init; }

    /// <summary>Serial number fields taken out.</summary>
    public int Serials { get; init; }

    public int Pictures { get; init; }

    /// <summary>Of the pictures: those that told more than they show.</summary>
    public int Stripped { get; init; }

    /// <summary>Names, numbers and addresses replaced in free text.</summary>
    public ImmutableArray<Replacement> Replaced { get; init; } = [];

    public ImmutableArray<LeftOut> LeftOut { get; init; } = [];

    /// <summary>Where it stands; null when refused.</summary>
    public string? Place { get; init; }

    public Refusal? Refused { get; init; }
}

/// <param name="Path">Note in which it stood.</param>
public sealed record Replacement(string Path, string What);
