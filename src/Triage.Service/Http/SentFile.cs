using System.Buffers;
using Microsoft.AspNetCore.Http;

namespace Triage.Service.Http;

/// <summary>A file that is the whole body of a request, in memory that the next one uses again: many that are refused cost no more than one.</summary>
internal sealed class SentFile : IDisposable
{
    private const int First = 1 << 16, LargestKept = 1 << 24, MostKept = 4;

    /// <summary>Of its own: the shared one keeps as many as there are threads.</summary>
    private static readonly ArrayPool<byte> Pool = ArrayPool<byte>.Create(LargestKept, MostKept);

    private byte[] rented;
    private int length;

    private SentFile(int first) => rented = Pool.Rent(first);

    public ReadOnlyMemory<byte> Bytes => rented.AsMemory(0, length);

    /// <param name="most">Bytes; of a longer one only as much is read as shows that it is longer.</param>
    public static async Task<SentFile> Read(HttpContext http, int most)
    {
        var file = new SentFile((int)Math.Clamp(http.Request.ContentLength + 1 ?? First, First, most + 1L));
        try
        {
            int read;
            while (file.length <= most && (read = await http.Request.Body.ReadAsync(file.Free(), http.RequestAborted)) > 0)
                file.length += read;
            return file;
        }
        catch
        {
            file.Dispose();
            throw;
        }
    }

    public void Dispose() => Pool.Return(rented);

    private Memory<byte> Free()
    {
        if (length == rented.Length)
        {
            var larger = Pool.Rent(2 * length);
            rented.CopyTo(larger, 0);
            Pool.Return(rented);
            rented = larger;
        }

        return rented.AsMemory(length);
    }
}
