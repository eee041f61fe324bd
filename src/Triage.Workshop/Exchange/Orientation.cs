using System.Buffers.Binary;

namespace Triage.Workshop.Exchange;

/// <summary>Which way up a photo was taken, the one thing of its Exif that showing it needs (Exif 2.3, 4.6.4; TIFF 6.0, section 2).</summary>
internal static class Orientation
{
    /// <summary>Bytes of <see cref="Alone"/>: header 8, count 2, one entry 12, no next directory 4.</summary>
    public const int Length = 26;

    private const ushort Tag = 0x0112, Short = 3;

    private const int Upright = 1, Last = 8, EntryLength = 12;

    public static ReadOnlySpan<byte> Head => "Exif\0\0"u8;

    /// <summary>2 to 8 when the first directory says that the picture is to be turned or mirrored; null when upright, not said or not sound.</summary>
    public static ushort? Of(ReadOnlySpan<byte> tiff)
    {
        if (tiff.Length < 8 || !(tiff.StartsWith("II"u8) || tiff.StartsWith("MM"u8)))
            return null;
        var little = tiff[0] == 'I';
        var from = little ? BinaryPrimitives.ReadUInt32LittleEndian(tiff[4..]) : BinaryPrimitives.ReadUInt32BigEndian(tiff[4..]);
        if (from > tiff.Length - 2)
            return null;
        var entries = tiff[(int)from..];
        var count = Number(entries, little);
        for (var (i, at) = (0, 2); i < count && at + EntryLength <= entries.Length; i++, at += EntryLength)
        {
            if (Number(entries[at..], little) == Tag && Number(entries[(at + 2)..], little) == Short)
                return Number(entries[(at + 8)..], little) is > Upright and <= Last and var turned ? turned : null;
        }

        return null;
    }

    /// <summary>A directory that says nothing else.</summary>
    public static byte[] Alone(ushort turned) =>
        [.. "MM\0*"u8, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, (byte)turned, 0, 0, 0, 0, 0, 0];

    private static ushort Number(ReadOnlySpan<byte> at, bool little) =>
        little ? BinaryPrimitives.ReadUInt16LittleEndian(at) : BinaryPrimitives.ReadUInt16BigEndian(at);
}
