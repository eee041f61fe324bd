using System.Collections.Immutable;
using System.IO.Compression;

namespace Triage.Workshop.Exchange;

/// <summary>
/// Somebody else's book as it was handed over: a folder or a zip. Nothing in it is trusted: a name that leads out of the folder, a link,
/// or a file that swells beyond measure refuses the whole. Dot-folders are passed over.
/// </summary>
internal sealed class Parcel : IDisposable
{
    /// <summary>
    /// Bounds of what is taken at all: bytes a file, bytes in all, files, how far a file of over a megabyte may swell, and how far a zip as a whole that
    /// holds over ten (common practice, no source; texts swell four- to tenfold).
    /// </summary>
    private const long LargestFile = 100_000_000, Largest = 4_000_000_000, MostFiles = 500_000, MostSwelling = 200, Small = 1_000_000, MostSwellingInAll = 30, SmallInAll = 10_000_000;

    private const int UnixKind = 0xF000, UnixLink = 0xA000;

    private readonly ZipArchive? zip;

    private Parcel(ZipArchive? zip, ImmutableArray<ParcelFile> files) => (this.zip, Files) = (zip, files);

    public ImmutableArray<ParcelFile> Files { get; }

    /// <exception cref="SharingRefusedException">It is not there, no zip, or not safe.</exception>
    public static Parcel Open(string from)
    {
        if (Directory.Exists(from))
            return new(null, Bounded(from, OfFolder(from)));
        ZipArchive? zip = null;
        try
        {
            zip = ZipFile.OpenRead(from);
            return new(zip, NotSwollen(from, Bounded(from, OfZip(from, zip))));
        }
        catch (Exception e) when (e is InvalidDataException or IOException or UnauthorizedAccessException)
        {
            zip?.Dispose();
            throw new SharingRefusedException(e is InvalidDataException ? SharingTexts.NoZip(from) : SharingTexts.CannotRead(from, e));
        }
        catch (SharingRefusedException)
        {
            zip?.Dispose();
            throw;
        }
    }

    public void Dispose() => zip?.Dispose();

    private static IEnumerable<ParcelFile> OfFolder(string folder)
    {
        var all = new EnumerationOptions { RecurseSubdirectories = false, AttributesToSkip = 0 };
        var waiting = new Stack<string>([folder]);
        while (waiting.TryPop(out var next))
        {
            foreach (var entry in new DirectoryInfo(next).EnumerateFileSystemInfos("*", all).Where(e => !e.Name.StartsWith('.')))
            {
                var path = Path.GetRelativePath(folder, entry.FullName).Replace('\\', '/');
                if (entry.LinkTarget is not null)
                    throw new SharingRefusedException(SharingTexts.Link(path));
                if (entry is FileInfo file)
                    yield return new(path, file.Length, file.OpenRead);
                else
                    waiting.Push(entry.FullName);
            }
        }
    }

    private static IEnumerable<ParcelFile> OfZip(string from, ZipArchive zip)
    {
        foreach (var entry in zip.Entries)
        {
            if (!IsInside(entry.FullName))
                throw new SharingRefusedException(SharingTexts.LeadsOut(entry.FullName));
            if ((entry.ExternalAttributes >> 16 & UnixKind) == UnixLink)
                throw new SharingRefusedException(SharingTexts.Link(entry.FullName));
            if (entry.Length > Small && entry.Length / Math.Max(1, entry.CompressedLength) > MostSwelling)
                throw new SharingRefusedException(SharingTexts.Swells(entry.FullName, entry.Length));
            if (entry.IsEncrypted)
                throw new SharingRefusedException(SharingTexts.Locked(from));
            if (!entry.FullName.EndsWith('/') && !entry.FullName.Split('/').Any(s => s.StartsWith('.')))
                yield return new(entry.FullName, entry.Length, entry.Open);
        }
    }

    /// <summary>Relative, on every system: no drive, no backslash, no step upwards, no control sign.</summary>
    private static bool IsInside(string name) =>
        name.Length > 0 && name[0] != '/' && !name.Any(c => c is '\\' or ':' || char.IsControl(c))
        && name.TrimEnd('/').Split('/').All(s => s.Length > 0 && s is not ("." or ".."));

    /// <summary>Many files, each of them small, swell no less than one.</summary>
    private static ImmutableArray<ParcelFile> NotSwollen(string from, ImmutableArray<ParcelFile> files) =>
        files.Sum(f => f.Length) is var all && all > SmallInAll && all / Math.Max(1, new FileInfo(from).Length) >= MostSwellingInAll
            ? throw new SharingRefusedException(SharingTexts.SwellsInAll(from, all)) : files;

    private static ImmutableArray<ParcelFile> Bounded(string from, IEnumerable<ParcelFile> files)
    {
        var (all, names, total) = (ImmutableArray.CreateBuilder<ParcelFile>(), new HashSet<string>(StringComparer.OrdinalIgnoreCase), 0L);
        foreach (var file in files)
        {
            total += file.Length;
            if (file.Length > LargestFile || total > Largest || all.Count == MostFiles)
                throw new SharingRefusedException(SharingTexts.TooLarge(from, file.Path));
            if (!names.Add(file.Path))
                throw new SharingRefusedException(SharingTexts.NameTwice(file.Path));
            all.Add(file);
        }

        return [.. all.OrderBy(f => f.Path, StringComparer.Ordinal)];
    }
}

/// <param name="Path">Relative, with forward slashes.</param>
/// <param name="Length">In bytes, as it was announced.</param>
internal sealed record ParcelFile(string Path, long Length, Func<Stream> Open)
{
    public bool IsNote => Path.EndsWith(".md", StringComparison.OrdinalIgnoreCase);

    /// <exception cref="SharingRefusedException">It holds more or less than announced, or is damaged.</exception>
    public byte[] Read()
    {
        try
        {
            using var stream = Open();
            var bytes = new byte[Length];
            return stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false) == bytes.Length && stream.ReadByte() < 0 ? bytes : throw new InvalidDataException();
        }
        catch (Exception e) when (e is InvalidDataException or IOException or UnauthorizedAccessException)
        {
            throw new SharingRefusedException(SharingTexts.Damaged(Path));
        }
    }
}
