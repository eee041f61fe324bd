using System.IO.Compression;

namespace Triage.Cli.Tests.Commands;

/// <summary>One's own book given out: what private is in it stays at home, and another bench can take the rest.</summary>
public sealed class ShareTests : IDisposable
{
    private static readonly string[] Private = ["Amsel", "SN-448-1", "0171 555 0123", "+44 20 7946 0018", "amsel@post.example", "tEXt", "sent by"];

    private readonly TestBench bench = TestBench.Small();

    public ShareTests()
    {
        Write("2025-009.md", """
            ---
            format: 1
            kind: job
            id: "2025-009"
            name: C-1 of Mrs Amsel
            device: aldine-c1
            opened: 2025-03-02T19:20:00+01:00
            owner: Hedi Amsel
            serial: SN-448-1
            complaint: "Blank face. Call me on 0171 555 0123, Amsel"
            log:
              - {at: 2025-03-02T19:21:00+01:00, saw: clock-face, value: blank, photos: [photos/face.png, photos/page.pdf]}
            causes:
              - {fault: backup-cap-shorted, grade: measured}
            outcome: mended
            closed: 2025-03-10T21:00:00+01:00
            ---
            C3 read 12 R, 0.1 F rated, part 0104 7, on 2025-03-09. Write to hedi.amsel@post.example or +44 20 7946 0018; label SN-448-1.

            """);
        Write("photos/page.pdf", "%PDF sent by");
        Write("photos/spare.png", "");
        Directory.CreateDirectory(bench.File("small", "photos"));
        File.WriteAllBytes(bench.File("small", "photos/face.png"), Png("tEXt"));
    }

    public void Dispose() => bench.Dispose();

    [Fact]
    public async Task Page_says_what_was_taken_out_and_what_stays_at_home()
    {
        var said = await Ran("share", "--out", bench.File("small", "../out"));

        Snapshooter.Xunit3.Snapshot.Match(said.Lines.Where(l => !l.StartsWith("  place", StringComparison.Ordinal) && !l.Contains("/out", StringComparison.Ordinal)).ToArray());
    }

    [Theory]
    [InlineData("out")]
    [InlineData("out.zip")]
    public async Task Nothing_private_is_left_and_another_bench_can_take_it(string name)
    {
        var place = bench.File("small", $"../{name}");
        await Ran("share", "--out", place);

        var files = Files(place);
        Assert.All(files.Values, text => Assert.All(Private, p => Assert.DoesNotContain(p, text, StringComparison.OrdinalIgnoreCase)));
        Assert.Contains("C3 read 12 R, 0.1 F rated, part 0104 7, on 2025-03-09.", files["2025-009.md"], StringComparison.Ordinal);
        Assert.Contains("2024-001.md", files.Keys);
        Assert.DoesNotContain("2026-001.md", files.Keys);
        Assert.Equal(Png(null), System.Text.Encoding.Latin1.GetBytes(files["photos/face.png"]));

        using var other = TestBench.Small();
        File.Delete(other.File("small", "2024-001.md"));
        var taken = await other.Run("take", place, "--as", "runa", "--trust", "known", "--write");
        Assert.True(taken.Code == 0, taken.Errors);
        Assert.Contains("2025-009", (await other.Run("find", "blank", "--kind", "job")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task File_named_after_an_owner_is_given_out_under_another_name_and_still_found()
    {
        Write("jobs/hedi-amsel.md", File.ReadAllText(bench.File("small", "2025-009.md")).Replace("2025-009", "2025-010", StringComparison.Ordinal)
            .Replace("photos/face.png", "photos/Amsel-1.png", StringComparison.Ordinal));
        File.WriteAllBytes(bench.File("small", "photos/Amsel-1.png"), Png(null));
        var place = bench.File("small", "../out");

        await Ran("share", "--out", place);

        var files = Files(place);
        Assert.DoesNotContain(files, f => Private.Any(p => f.Key.Contains(p, StringComparison.OrdinalIgnoreCase) || f.Value.Contains(p, StringComparison.OrdinalIgnoreCase)));
        var photo = Assert.Single(files.Keys, k => k.StartsWith("photos/owner", StringComparison.Ordinal));
        Assert.Contains(photo, Assert.Single(files, f => f.Key.StartsWith("jobs/owner", StringComparison.Ordinal)).Value, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Place_that_is_there_or_inside_the_book_is_refused()
    {
        var there = bench.File("small", "../there");
        Directory.CreateDirectory(there);

        Assert.Contains("is there already", (await bench.Run("share", "--out", there)).Error, StringComparison.Ordinal);
        Assert.Contains("lies inside the book", (await bench.Run("share", "--out", bench.File("small", "out"))).Error, StringComparison.Ordinal);
    }

    private static Dictionary<string, string> Files(string place)
    {
        if (Directory.Exists(place))
            return Directory.EnumerateFiles(place, "*", SearchOption.AllDirectories).ToDictionary(f => Path.GetRelativePath(place, f), f => System.Text.Encoding.Latin1.GetString(File.ReadAllBytes(f)));
        using var zip = ZipFile.OpenRead(place);
        return zip.Entries.ToDictionary(e => e.FullName, e =>
        {
            using var text = new StreamReader(e.Open(), System.Text.Encoding.Latin1);
            return text.ReadToEnd();
        });
    }

    /// <summary>Chunks of a picture, one of them with text; check sums are not looked at here.</summary>
    private static byte[] Png(string? text) =>
    [
        0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A, .. Chunk("IHDR", new byte[13]),
        .. text is null ? [] : Chunk(text, [.. "sent by"u8]), .. Chunk("IDAT", [1, 2, 3]), .. Chunk("IEND", []),
    ];

    private static byte[] Chunk(string kind, byte[] content) => [0, 0, 0, (byte)content.Length, .. System.Text.Encoding.ASCII.GetBytes(kind), .. content, 0, 0, 0, 0];

    private void Write(string path, string text)
    {
        var file = bench.File("small", path);
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        File.WriteAllText(file, text);
    }

    private async Task<Said> Ran(params string[] args)
    {
        var said = await bench.Run(args);
        Assert.True(said.Code == 0, said.Errors);
        return said;
    }
}
