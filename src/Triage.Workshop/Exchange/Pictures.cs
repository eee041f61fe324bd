namespace Triage.Workshop.Exchange;

/// <summary>
/// Photos without what they say beside the picture: place, time, camera, names, comments. Only the parts needed to show the picture are
/// kept, so that an unknown part goes too; what stands behind the end of the picture goes as well. Which way up it was taken stays.
/// </summary>
internal static class Pictures
{
    private static ReadOnlySpan<byte> PngMark => [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A];

    private static readonly string[] PngKept =
        ["IHDR", "PLTE", "IDAT", "IEND", "tRNS", "gAMA", "cHRM", "sRGB", "iCCP", "sBIT", "bKGD", "pHYs"];

    /// <summary>Null when it is neither a sound JPEG nor a sound PNG, by what it holds and not by its name.</summary>
    public static byte[]? Stripped(byte[] file) =>
        file.AsSpan().StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF]) ? Jpeg(file)
        : file.AsSpan().StartsWith(PngMark) ? Png(file)
        : null;

    /// <summary>Segments: FF, kind, length with itself, content; after a start of scan (DA) entropy-coded data up to the next marker (ITU-T T.81, annex B).</summary>
    private static byte[]? Jpeg(ReadOnlySpan<byte> file)
    {
        using var kept = new MemoryStream(file.Length);
        kept.Write(file[..2]);
        for (var at = 2; at + 4 <= file.Length || at + 2 == file.Length;)
        {
            if (file[at] != 0xFF)
                return null;
            var kind = file[at + 1];
            if (kind == 0xFF)
            {
                at++;
                continue;
            }

            if (kind == 0xD9)
            {
                kept.Write(file.Slice(at, 2));
                return kept.ToArray();
            }

            if (at + 4 > file.Length)
                return null;
            var length = 2 + (file[at + 2] << 8) + file[at + 3];
            if (length < 4 || at + length > file.Length)
                return null;
            var end = kind == 0xDA ? EndOfScan(file, at + length) : at + length;
            var content = file.Slice(at + 4, length - 4);
            if (IsPicture(kind, content))
                kept.Write(file[at..end]);
            else if (kind == 0xE1 && content.StartsWith(Orientation.Head) && Orientation.Of(content[Orientation.Head.Length..]) is { } turned)
                kept.Write([0xFF, 0xE1, 0, (byte)(2 + Orientation.Head.Length + Orientation.Length), .. Orientation.Head, .. Orientation.Alone(turned)]);
            at = end;
        }

        return null;
    }

    /// <summary>Of the application segments only the JFIF head, the colour profile and the colour transform are part of the picture; comments are not.</summary>
    private static bool IsPicture(byte kind, ReadOnlySpan<byte> content) => kind switch
    {
        0xE0 => content.StartsWith("JFIF\0"u8),
        0xE2 => content.StartsWith("ICC_PROFILE\0"u8),
        0xEE => content.StartsWith("Adobe"u8),
        >= 0xE0 and <= 0xEF or 0xFE => false,
        _ => true,
    };

    private static int EndOfScan(ReadOnlySpan<byte> file, int from)
    {
        var at = from;
        while (at + 1 < file.Length && !(file[at] == 0xFF && file[at + 1] is not (0x00 or 0xFF or (>= 0xD0 and <= 0xD7))))
            at++;
        return at;
    }

    /// <summary>Chunks: length, kind, content, check sum (ISO/IEC 15948, 5.3).</summary>
    private static byte[]? Png(ReadOnlySpan<byte> file)
    {
        using var kept = new MemoryStream(file.Length);
        kept.Write(PngMark);
        for (var at = PngMark.Length; at + 12 <= file.Length;)
        {
            var length = System.Buffers.Binary.BinaryPrimitives.ReadUInt32BigEndian(file[at..]);
            if (length > (uint)(file.Length - at - 12))
                return null;
            var kind = System.Text.Encoding.Latin1.GetString(file.Slice(at + 4, 4));
            var chunk = file.Slice(at, 12 + (int)length);
            if (PngKept.Contains(kind))
                kept.Write(chunk);
            if (kind == "IEND")
                return kept.ToArray();
            at += chunk.Length;
        }

        return null;
    }
}
