using System.IO.Compression;
using System.Security.Cryptography;

namespace Triage.Workshop.Keeping;

/// <summary>Files going into a zip one by one, each with its checksum.</summary>
internal sealed class Packing(string folder, ZipArchive zip, IProgress<int>? progress, CancellationToken stop)
{
    /// <summary>Larger files are packed as they are read: nobody types in them.</summary>
    private const long Large = 64_000_000;

    private const int MostTries = 20, UnixFile = 0x8000;

    private static readonly DateTimeOffset Earliest = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero), Latest = new(2107, 12, 31, 0, 0, 0, TimeSpan.Zero);

    private readonly Dictionary<string, string> sums = new(StringComparer.Ordinal);

    public int Files => sums.Count;

    public long Bytes { get; private set; }

    /// <summary>Packs what is not packed yet. A file that goes away meanwhile is passed over.</summary>
    public void Add(IEnumerable<string> paths)
    {
        foreach (var path in paths.Where(p => !sums.ContainsKey(p)))
        {
            stop.ThrowIfCancellationRequested();
            try
            {
                Add(path);
            }
            catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
            {
                continue;
            }

            progress?.Report(Files);
        }
    }

    /// <summary>Writes the manifest, the last file of all.</summary>
    public void Finish()
    {
        using var stream = zip.CreateEntry(Manifest.Name).Open();
        stream.Write(Manifest.Of(sums.Select(s => (s.Key, s.Value))));
    }

    private void Add(string path)
    {
        var file = new FileInfo(Path.Combine(folder, path));
        using var content = file.Length > Large ? file.OpenRead() : (Stream)new MemoryStream(Settled(file), writable: false);
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
        var bytes = File.ReadAllBytes(file.FullName);
        for (var tries = 0; tries < MostTries; tries++)
        {
            var (length, time) = (file.Length, file.LastWriteTimeUtc);
            file.Refresh();
            if (file.Length == length && file.LastWriteTimeUtc == time && bytes.Length == length)
                return bytes;
            bytes = File.ReadAllBytes(file.FullName);
        }

        return bytes;
    }
}
