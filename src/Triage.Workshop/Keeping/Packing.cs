using System.IO.Compression;
using System.Security.Cryptography;
using Triage.Notes.Files;
using Triage.Workshop.Exchange;

namespace Triage.Workshop.Keeping;

/// <summary>Files going into a zip one by one, each with its checksum.</summary>
internal sealed class Packing(string folder, ZipArchive zip, IProgress<int>? progress, CancellationToken stop)
{
    /// <summary>Larger files are packed as they are read: nobody types in them.</summary>
    private const long Large = 64_000_000;

    private const int MostTries = 20, UnixFile = 0x8000;

    private static readonly DateTimeOffset Earliest = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero), Latest = new(2107, 12, 31, 0, 0, 0, TimeSpan.Zero);

    private readonly Dictionary<string, string> sums = new(StringComparer.Ordinal);

    private readonly SortedDictionary<string, string> unread = new(StringComparer.Ordinal);

    /// <summary>Files that could not be read.</summary>
    public IEnumerable<LeftOut> Unread => unread.Select(u => new LeftOut(u.Key, u.Value));

    public int Files => sums.Count;

    public long Bytes { get; private set; }

    /// <summary>Packs what is not packed yet. A file that goes away meanwhile is passed over.</summary>
    public void Add(IEnumerable<string> paths)
    {
        foreach (var path in paths.Where(p => !sums.ContainsKey(p)))
        {
            stop.ThrowIfCancellationRequested();
            if (Open(path) is not { } content)
                continue;
            using (content)
                Add(path, content);
            progress?.Report(Files);
        }
    }

    /// <summary>Writes the manifest, the last file of all.</summary>
    public void Finish()
    {
        using var stream = zip.CreateEntry(Manifest.Name).Open();
        stream.Write(Manifest.Of(sums.Select(s => (s.Key, s.Value))));
    }

    /// <summary>Null when it went away, or cannot be read.</summary>
    private Stream? Open(string path)
    {
        var file = new FileInfo(Path.Combine(folder, path));
        try
        {
            return file.Length > Large ? InBook.Open(file.FullName) : new MemoryStream(Settled(file), writable: false);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            unread.TryAdd(path, $"it cannot be read: {e.Message}");
            return null;
        }
    }

    private void Add(string path, Stream content)
    {
        var file = new FileInfo(Path.Combine(folder, path));
        var entry = zip.CreateEntry(Manifest.Book + path, CompressionLevel.Fastest);
        var time = new DateTimeOffset(file.LastWriteTime);
        entry.LastWriteTime = time < Earliest ? Earliest : time > Latest ? Latest : time;
        if (!OperatingSystem.IsWindows())
            entry.ExternalAttributes = (UnixFile | (int)file.UnixFileMode) << 16;
        using var sum = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        using var packed = entry.Open();
        var buffer = new byte[81_920];
        for (int read; (read = content.Read(buffer)) > 0; Bytes += read)
        {
            sum.AppendData(buffer, 0, read);
            packed.Write(buffer, 0, read);
        }

        sums.Add(path, Convert.ToHexStringLower(sum.GetHashAndReset()));
    }

    /// <summary>The file as it is between two saves of an editor.</summary>
    private static byte[] Settled(FileInfo file)
    {
        var bytes = InBook.ReadAll(file.FullName);
        for (var tries = 0; tries < MostTries; tries++)
        {
            var (length, time) = (file.Length, file.LastWriteTimeUtc);
            file.Refresh();
            if (file.Length == length && file.LastWriteTimeUtc == time && bytes.Length == length)
                return bytes;
            bytes = InBook.ReadAll(file.FullName);
        }

        return bytes;
    }
}
