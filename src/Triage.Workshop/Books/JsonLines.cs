using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Triage.Workshop.Books;

/// <summary>A file that grows by lines of JSON. What a kill or a power cut tore is passed over, and spoils no other line.</summary>
internal static class JsonLines
{
    private static readonly JsonSerializerOptions Plain = new(JsonSerializerDefaults.Web)
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingDefault,
    };

    public static byte[] Line<T>(T said) => [.. JsonSerializer.SerializeToUtf8Bytes(said, Plain), (byte)'\n'];

    /// <summary>What the file says, the oldest first; nothing when it is not there.</summary>
    public static IEnumerable<T> Read<T>(string file) where T : class
    {
        if (!File.Exists(file))
            yield break;
        using var text = new StreamReader(new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete));
        while (text.ReadLine() is { } line)
        {
            if (Said<T>(line) is { } said)
                yield return said;
        }
    }

    /// <summary>The end of the file as text; its first line may be cut.</summary>
    public static string Tail(string file, int bytes)
    {
        if (!File.Exists(file))
            return "";
        using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        stream.Position = Math.Max(0, stream.Length - bytes);
        using var text = new StreamReader(stream);
        return text.ReadToEnd();
    }

    /// <param name="line">As <see cref="Line"/> makes it.</param>
    /// <param name="like">A file whose readers may read a new one, too.</param>
    /// <returns>Length of the file before.</returns>
    public static long Append(string file, byte[] line, string? like = null)
    {
        var options = new FileStreamOptions { Mode = FileMode.OpenOrCreate, Access = FileAccess.ReadWrite, Share = FileShare.ReadWrite | FileShare.Delete, BufferSize = 0 };
        if (!OperatingSystem.IsWindows() && like is not null && File.Exists(like))
            options.UnixCreateMode = File.GetUnixFileMode(like);
        using var stream = new FileStream(file, options);
        var before = stream.Length;
        stream.Position = Math.Max(0, before - 1);
        stream.Write(stream.ReadByte() is '\n' or -1 ? line : [(byte)'\n', .. line]);
        return before;
    }

    private static T? Said<T>(string line) where T : class
    {
        try
        {
            return JsonSerializer.Deserialize<T>(line, Plain);
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
