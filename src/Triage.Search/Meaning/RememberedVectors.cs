using System.Collections.Concurrent;
using System.Security.Cryptography;
using System.Text;

namespace Triage.Search.Meaning;

/// <summary>
/// Vectors by their texts, in memory and, where a file is named, kept there from one run to the next. The file is a cache: a missing,
/// foreign or damaged one is started anew.
/// </summary>
/// <remarks>
/// Records of one size: sixteen bytes of the text's SHA-256, then <see cref="SentenceVectors.Width"/> numbers of sixteen bits
/// (IEEE 754 binary16; the cosine changes by less than 0.001), after a line that names model and version.
/// </remarks>
public sealed class RememberedVectors(string? file)
{
    private static readonly byte[] Head = Encoding.ASCII.GetBytes("sentence vectors, MiniLM L6, 384 half, 1\n");
    private const int KeySize = 16;
    private const int RecordSize = KeySize + (SentenceVectors.Width * 2);

    private readonly Lazy<ConcurrentDictionary<UInt128, float[]>> _known = new(() => Read(file));
    private int _kept = -1;

    /// <summary>The vector of a text seen before, or null.</summary>
    public float[]? Find(string text) => _known.Value.GetValueOrDefault(Key(text));

    /// <summary>Remembers a vector for this run; <see cref="Keep"/> writes it down.</summary>
    public void Add(string text, float[] vector) => _known.Value[Key(text)] = Rounded(vector);

    /// <summary>
    /// Writes the file anew if anything was added: beside it first, then renamed, so that a reader never meets half a file. A folder that
    /// cannot be written costs only time at the next start.
    /// </summary>
    public void Keep()
    {
        if (file is null || _known.Value.Count == _kept)
        {
            return;
        }
        string beside = $"{file}.{Environment.ProcessId}";
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(file))!);
            File.WriteAllBytes(beside, Written());
            File.Move(beside, file, overwrite: true);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            File.Delete(beside);
        }
    }

    private byte[] Written()
    {
        var known = _known.Value.ToArray();
        using var bytes = new MemoryStream(Head.Length + (known.Length * RecordSize));
        using var writer = new BinaryWriter(bytes);
        writer.Write(Head);
        foreach (var (key, vector) in known.OrderBy(one => one.Key))
        {
            writer.Write((ulong)(key >> 64));
            writer.Write((ulong)key);
            foreach (float number in vector)
            {
                writer.Write((Half)number);
            }
        }
        _kept = known.Length;
        return bytes.ToArray();
    }

    private static ConcurrentDictionary<UInt128, float[]> Read(string? file)
    {
        var known = new ConcurrentDictionary<UInt128, float[]>();
        if (file is null || !File.Exists(file))
        {
            return known;
        }
        byte[] bytes = File.ReadAllBytes(file);
        if (!bytes.AsSpan().StartsWith(Head) || (bytes.Length - Head.Length) % RecordSize != 0)
        {
            return known;
        }
        using var reader = new BinaryReader(new MemoryStream(bytes, Head.Length, bytes.Length - Head.Length));
        for (int left = (bytes.Length - Head.Length) / RecordSize; left > 0; left--)
        {
            var key = new UInt128(reader.ReadUInt64(), reader.ReadUInt64());
            var vector = new float[SentenceVectors.Width];
            for (int i = 0; i < vector.Length; i++)
            {
                vector[i] = (float)reader.ReadHalf();
            }
            known[key] = vector;
        }
        return known;
    }

    // The same numbers in the first run as in every later one.
    private static float[] Rounded(float[] vector) => [.. vector.Select(number => (float)(Half)number)];

    private static UInt128 Key(string text)
    {
        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(Encoding.UTF8.GetBytes(text), hash);
        return System.Buffers.Binary.BinaryPrimitives.ReadUInt128LittleEndian(hash[..KeySize]);
    }
}
