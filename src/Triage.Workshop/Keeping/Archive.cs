using System.Collections.Immutable;
using System.IO.Compression;
using System.Security.Cryptography;

namespace Triage.Workshop.Keeping;

/// <summary>A backup that was opened. Nothing in it is trusted: names, links, sizes and every byte are held against the manifest.</summary>
internal sealed class Archive : IDisposable
{
    /// <summary>Bounds over the whole of it (common practice, no source): files, how far it may swell, and a size below which it may swell more.</summary>
    private const int MostFiles = 2_000_000, MostSwelling = 200, Small = 1_000_000, MostManifest = 500_000_000;

    private const int UnixKind = 0xF000, UnixLink = 0xA000, UnixMode = 0x1FF;

    private readonly ZipArchive zip;
    private readonly ImmutableDictionary<string, string> sums;

    private Archive(ZipArchive zip, ImmutableDictionary<string, string> sums, ImmutableArray<ZipArchiveEntry> files) => (this.zip, this.sums, Files) = (zip, sums, files);

    public ImmutableArray<ZipArchiveEntry> Files { get; }

    public long Bytes => Files.Sum(f => f.Length);

    /// <exception cref="KeepingRefusedException">It is not there, not whole, or not safe.</exception>
    public static Archive Open(string from)
    {
        ZipArchive? zip = null;
        try
        {
            zip = ZipFile.OpenRead(from);
            var sums = Sums(from, zip);
            return new(zip, sums, Checked(from, zip, sums));
        }
        catch (Exception e)
        {
            zip?.Dispose();
            throw e switch
            {
                InvalidDataException => new KeepingRefusedException(KeepingTexts.NoBackup(from)),
                IOException or UnauthorizedAccessException => new KeepingRefusedException(KeepingTexts.CannotRead(from, e)),
                _ => e,
            };
        }
    }

    /// <summary>Relative, with no step upwards and no sign that a system may take for more than a name.</summary>
    public static bool IsInside(string name) =>
        !name.Any(c => c == '\\' || char.IsControl(c) || (c == ':' && OperatingSystem.IsWindows()))
        && name.Split('/').All(s => s.Length > 0 && s is not ("." or ".."));

    /// <summary>Path of a file within the book.</summary>
    public static string PathOf(ZipArchiveEntry file) => file.FullName[Manifest.Book.Length..];

    /// <summary>Who may read and write it; null when the backup does not say.</summary>
    public static UnixFileMode? ModeOf(ZipArchiveEntry file) => (file.ExternalAttributes >> 16 & UnixMode) is > 0 and var mode ? (UnixFileMode)mode : null;

    /// <exception cref="KeepingRefusedException">What is in the backup is not what was put in.</exception>
    public void Copy(ZipArchiveEntry file, Stream to)
    {
        try
        {
            using var from = file.Open();
            using var sum = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
            var (buffer, left) = (new byte[81_920], file.Length);
            for (int read; (read = from.Read(buffer)) > 0 && (left -= read) >= 0;)
            {
                sum.AppendData(buffer, 0, read);
                to.Write(buffer, 0, read);
            }

            if (left != 0 || Convert.ToHexStringLower(sum.GetHashAndReset()) != sums[PathOf(file)])
                throw new InvalidDataException();
        }
        catch (InvalidDataException)
        {
            throw new KeepingRefusedException(KeepingTexts.Damaged(PathOf(file)));
        }
    }

    public void Dispose() => zip.Dispose();

    private static ImmutableDictionary<string, string> Sums(string from, ZipArchive zip)
    {
        if (zip.Entries.Count(e => e.FullName == Manifest.Name) != 1 || zip.GetEntry(Manifest.Name)!.Length > MostManifest)
            throw new KeepingRefusedException(KeepingTexts.NoManifest(from));
        var entry = zip.GetEntry(Manifest.Name)!;
        using var stream = entry.Open();
        var bytes = new byte[entry.Length];
        return stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false) == bytes.Length && Manifest.Read(bytes) is { } sums
            ? sums
            : throw new KeepingRefusedException(KeepingTexts.NoManifest(from));
    }

    private static ImmutableArray<ZipArchiveEntry> Checked(string from, ZipArchive zip, ImmutableDictionary<string, string> sums)
    {
        if (zip.Entries.Count > MostFiles)
            throw new KeepingRefusedException(KeepingTexts.TooMany(from, zip.Entries.Count));
        var (files, seen, total) = (ImmutableArray.CreateBuilder<ZipArchiveEntry>(), new HashSet<string>(StringComparer.Ordinal), 0L);
        foreach (var entry in zip.Entries.Where(e => e.FullName != Manifest.Name && !e.FullName.EndsWith('/')))
        {
            if (Refuses(entry, sums, seen) is { } refused)
                throw new KeepingRefusedException(refused);
            total += entry.Length;
            files.Add(entry);
        }

        if (total > Small && total / MostSwelling > new FileInfo(from).Length)
            throw new KeepingRefusedException(KeepingTexts.Swells(from, total));
        return sums.Keys.Order(StringComparer.Ordinal).FirstOrDefault(p => !seen.Contains(p)) is { } missing
            ? throw new KeepingRefusedException(KeepingTexts.Missing(missing))
            : files.ToImmutable();
    }

    private static Refusal? Refuses(ZipArchiveEntry entry, ImmutableDictionary<string, string> sums, HashSet<string> seen) =>
        !IsInside(entry.FullName) ? KeepingTexts.LeadsOut(entry.FullName)
        : (entry.ExternalAttributes >> 16 & UnixKind) == UnixLink ? KeepingTexts.Link(entry.FullName)
        : !entry.FullName.StartsWith(Manifest.Book, StringComparison.Ordinal) || !sums.ContainsKey(PathOf(entry)) || !seen.Add(PathOf(entry)) ? KeepingTexts.NotListed(entry.FullName)
        : null;
}
