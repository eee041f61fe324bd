using Triage.Workshop.Exchange;
using Triage.Workshop.Steps;

namespace Triage.Workshop.Keeping;

/// <summary>Whether a photo or a drawing is there to its end, by what it holds.</summary>
internal static class WholeFiles
{
    /// <summary>Where in a PDF's last bytes its end is marked (ISO 32000-1, annex H, 3.1).</summary>
    private const int PdfEnd = 1024;

    /// <summary>True for what is neither photo nor drawing: nobody knows what its end looks like.</summary>
    public static bool IsWhole(string path, ReadOnlySpan<byte> file) => DrawingFiles.EndingOf(file) switch
    {
        "jpg" or "png" => Pictures.Stripped(file.ToArray()) is not null,
        "webp" => file.Length >= 8 && BitConverter.ToUInt32(file[4..8]) + 8L <= file.Length,
        "pdf" => file[Math.Max(0, file.Length - PdfEnd)..].IndexOf("%%EOF"u8) >= 0,
        _ => Path.GetExtension(path).ToLowerInvariant() is not (".jpg" or ".jpeg" or ".png" or ".webp" or ".pdf"),
    };
}
