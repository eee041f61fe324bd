namespace Triage.Workshop.Steps;

/// <summary>What an uploaded picture is, by its content; its name and what the sender calls it say nothing.</summary>
/// <param name="Ending">Of the file it is kept in, without the dot.</param>
/// <param name="MediaType">As it is served.</param>
public sealed record PhotoKind(string Ending, string MediaType)
{
    private static readonly PhotoKind Jpeg = new("jpg", "image/jpeg"), Png = new("png", "image/png"), WebP = new("webp", "image/webp");

    private static ReadOnlySpan<byte> StartOfJpeg => [0xFF, 0xD8, 0xFF];

    private static ReadOnlySpan<byte> StartOfPng => [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A];

    /// <summary>
    /// By the first bytes: JPEG (ISO/IEC 10918-1, SOI and the next marker), PNG (ISO/IEC 15948, 5.2), WebP (RFC 9649, 2.3–2.4).
    /// </summary>
    /// <returns>Null for anything else.</returns>
    public static PhotoKind? Of(ReadOnlySpan<byte> content) =>
        content.StartsWith(StartOfJpeg) ? Jpeg
        : content.StartsWith(StartOfPng) ? Png
        : content.StartsWith("RIFF"u8) && content.Length >= 12 && content[8..].StartsWith("WEBP"u8) ? WebP
        : null;
}
