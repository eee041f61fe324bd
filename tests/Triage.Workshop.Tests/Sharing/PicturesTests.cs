using MetadataExtractor;
using MetadataExtractor.Formats.Exif;
using MetadataExtractor.Formats.Iptc;
using MetadataExtractor.Formats.Jpeg;
using MetadataExtractor.Formats.Xmp;
using Triage.Workshop.Exchange;
using Xunit;

namespace Triage.Workshop.Tests.Sharing;

/// <summary>Files built segment by segment (ITU-T T.81 annex B; ISO/IEC 15948, 5.3), read back with a library that is not ours.</summary>
public sealed class PicturesTests
{
    private static readonly byte[] Frame = [0xFF, 0xC0, 0, 11, 8, 0, 1, 0, 1, 1, 1, 0x11, 0];

    private static readonly byte[] Scan = [0xFF, 0xDA, 0, 8, 1, 1, 0, 0, 63, 0, 0x12, 0xFF, 0x00, 0x34, 0xFF, 0xD0, 0x56];

    private static readonly byte[] Jfif = Segment(0xE0, [.. "JFIF\0"u8, 1, 2, 0, 0, 1, 0, 1, 0, 0]);

    [Fact]
    public void Jpeg_loses_place_names_and_comments_and_keeps_the_picture()
    {
        byte[] photo =
        [
            0xFF, 0xD8, .. Jfif, .. Segment(0xE1, [.. "Exif\0\0"u8, .. Gps()]),
            .. Segment(0xE1, [.. "http://ns.adobe.com/xap/1.0/\0"u8, .. """<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" dc:source="H. Amsel"/></rdf:RDF></x:xmpmeta>"""u8]),
            .. Segment(0xED, [0x1C, 2, 90, 0, 6, .. "Ostara"u8]), .. Segment(0xFE, [.. "for H. Amsel"u8]), .. Segment(0xE5, [.. "maker's own"u8]),
            .. Frame, .. Scan, 0xFF, 0xD9, .. "a second picture behind the first"u8,
        ];
        var told = Read(photo);
        Assert.NotNull(told.OfType<GpsDirectory>().Single().GetGeoLocation());
        Assert.Contains(told, d => d is IptcDirectory);
        Assert.Contains(told, d => d is XmpDirectory);
        Assert.Contains(told, d => d is JpegCommentDirectory);

        var bare = Pictures.Stripped(photo)!;

        Assert.Equal([0xFF, 0xD8, .. Jfif, .. Frame, .. Scan, 0xFF, 0xD9], bare);
        Assert.DoesNotContain(Read(bare), d => d is ExifDirectoryBase or IptcDirectory or XmpDirectory or JpegCommentDirectory);
    }

    [Theory]
    [InlineData(false, 6)]
    [InlineData(true, 6)]
    [InlineData(false, 3)]
    [InlineData(true, 8)]
    public void Jpeg_keeps_which_way_up_it_was_taken_and_nothing_else_of_its_exif(bool bigEnd, int turned)
    {
        byte[] photo = [0xFF, 0xD8, .. Segment(0xE1, [.. "Exif\0\0"u8, .. Turned(bigEnd, (ushort)turned)]), .. Frame, .. Scan, 0xFF, 0xD9];
        Assert.StartsWith("Ostara", Read(photo).OfType<ExifIfd0Directory>().Single().GetString(ExifDirectoryBase.TagMake), StringComparison.Ordinal);

        var told = Read(Pictures.Stripped(photo)!).OfType<ExifDirectoryBase>().SelectMany(d => d.Tags.Select(t => (t.Type, Value: d.GetInt32(t.Type))));

        Assert.Equal([(ExifDirectoryBase.TagOrientation, turned)], told);
        Assert.Equal(Pictures.Stripped(photo), Pictures.Stripped(Pictures.Stripped(photo)!));
    }

    [Fact]
    public void Upright_or_unsound_exif_leaves_nothing()
    {
        byte[][] exifs = [Turned(true, 1), Turned(true, 9), Turned(false, 6)[..12], [.. "II*\0"u8, 0xFF, 0xFF, 0xFF, 0xFF], []];
        Assert.All(exifs, exif => Assert.Equal(
            [0xFF, 0xD8, .. Frame, .. Scan, 0xFF, 0xD9],
            Pictures.Stripped([0xFF, 0xD8, .. Segment(0xE1, [.. "Exif\0\0"u8, .. exif]), .. Frame, .. Scan, 0xFF, 0xD9])!));
    }

    [Fact]
    public void Png_loses_text_and_place_and_keeps_the_picture()
    {
        byte[] head = Chunk("IHDR", [0, 0, 0, 1, 0, 0, 0, 1, 8, 0, 0, 0, 0]), picture = Chunk("IDAT", [0x78, 0x9C, 0x63, 0, 0, 0, 1, 0, 1]), end = Chunk("IEND", []);
        byte[] mark = [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A];
        byte[] photo = [.. mark, .. head, .. Chunk("tEXt", [.. "Author\0H. Amsel"u8]), .. Chunk("eXIf", Gps()), .. Chunk("tIME", [7, 0xE8, 1, 2, 3, 4, 5]), .. picture, .. end, 1, 2, 3];
        Assert.Contains(Read(photo).SelectMany(d => d.Tags), t => t.Description?.Contains("Amsel", StringComparison.Ordinal) == true);

        var bare = Pictures.Stripped(photo)!;

        Assert.Equal([.. mark, .. head, .. picture, .. end], bare);
        Assert.DoesNotContain(Read(bare).SelectMany(d => d.Tags), t => t.Description?.Contains("Amsel", StringComparison.Ordinal) == true);
    }

    [Fact]
    public void What_is_cut_short_or_only_called_a_photo_is_none()
    {
        byte[] whole = [0xFF, 0xD8, .. Jfif, .. Frame, .. Scan, 0xFF, 0xD9];

        Assert.All(Enumerable.Range(0, whole.Length - 1), length => Assert.Null(Pictures.Stripped(whole[..length])));
        Assert.Null(Pictures.Stripped([.. "<svg/>"u8]));
    }

    private static IReadOnlyList<MetadataExtractor.Directory> Read(byte[] photo) => ImageMetadataReader.ReadMetadata(new MemoryStream(photo));

    private static byte[] Segment(byte kind, byte[] content) => [0xFF, kind, (byte)((content.Length + 2) >> 8), (byte)(content.Length + 2), .. content];

    private static byte[] Chunk(string kind, byte[] content)
    {
        byte[] checkedPart = [.. System.Text.Encoding.ASCII.GetBytes(kind), .. content];
        return [.. BigEndian((uint)content.Length), .. checkedPart, .. BigEndian(Crc(checkedPart))];
    }

    /// <summary>CRC-32 as in ISO/IEC 15948, annex D.</summary>
    private static uint Crc(byte[] bytes)
    {
        var crc = uint.MaxValue;
        foreach (var b in bytes)
        {
            crc ^= b;
            for (var bit = 0; bit < 8; bit++)
                crc = (crc & 1) == 1 ? 0xEDB88320 ^ (crc >> 1) : crc >> 1;
        }

        return ~crc;
    }

    private static byte[] BigEndian(uint n) => [(byte)(n >> 24), (byte)(n >> 16), (byte)(n >> 8), (byte)n];

    /// <summary>Maker and orientation in either byte order (TIFF 6.0, section 2).</summary>
    private static byte[] Turned(bool bigEnd, ushort turned)
    {
        byte[] Short(ushort n) => bigEnd ? [(byte)(n >> 8), (byte)n] : [(byte)n, (byte)(n >> 8)];
        byte[] Long(uint n) => bigEnd ? BigEndian(n) : [.. BigEndian(n).Reverse()];
        return
        [
            .. bigEnd ? "MM"u8 : "II"u8, .. Short(42), .. Long(8), .. Short(2),
            .. Short(0x010F), .. Short(2), .. Long(7), .. Long(38), .. Short(0x0112), .. Short(3), .. Long(1), .. Short(turned), 0, 0,
            .. Long(0), .. "Ostara\0"u8,
        ];
    }

    /// <summary>47° 30' 0" north, 8° 30' 0" east, as TIFF directories (Exif 2.3, 4.6).</summary>
    private static byte[] Gps()
    {
        using var tiff = new MemoryStream();
        using var w = new BinaryWriter(tiff);
        w.Write("II*\0"u8);
        w.Write(8);
        Entries((0x8825, 4, 1, 26));
        Entries((1, 2, 2, 'N'), (2, 5, 3, 80), (3, 2, 2, 'E'), (4, 5, 3, 104));
        foreach (var part in (int[])[47, 30, 0, 8, 30, 0])
        {
            w.Write(part);
            w.Write(1);
        }

        return tiff.ToArray();

        void Entries(params (int Tag, int Type, int Count, int Value)[] entries)
        {
            w.Write((ushort)entries.Length);
            foreach (var (tag, type, count, value) in entries)
            {
                w.Write((ushort)tag);
                w.Write((ushort)type);
                w.Write(count);
                w.Write(value);
            }

            w.Write(0);
        }
    }
}
