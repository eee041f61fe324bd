using System.IO.Compression;
using System.Text;

namespace Triage.Cli.Tests.Commands;

/// <summary>Somebody else's book, as a folder and as a zip: shown, taken, used, taken away; and zips that mean harm.</summary>
public sealed class TakeTests : IDisposable
{
    private readonly TestBench bench = TestBench.Small();

    public TakeTests()
    {
        Theirs("jobs/a.md", Job("b-7", "Ticks when warm"));
        Theirs("jobs/same-number.md", Job("2024-001", "Dead since the flood"));
        Theirs("jobs/open.md", Job("b-8", "Waits").Replace("outcome: mended\n", "", StringComparison.Ordinal).Replace("closed: 2023-01-02T10:00:00+00:00\n", "", StringComparison.Ordinal));
        Theirs("chime.md", File.ReadAllText(bench.File("small", "chime.md")));
        Theirs("clock-face.md", File.ReadAllText(bench.File("small", "clock-face.md")).Replace("name: ", "name: Their ", StringComparison.Ordinal));
        Theirs("bench.yaml", "currency: kr\n");
        Theirs(".git/config", "private");
    }

    private string Folder => bench.File("small", "../theirs");

    private string Zip => bench.File("small", "../theirs.zip");

    private string Shelf => bench.Folder("small") + ".taken";

    public void Dispose() => bench.Dispose();

    [Fact]
    public async Task Preview_says_what_comes_and_what_stays_out_and_writes_nothing()
    {
        var lines = (await Ran("take", Folder, "--as", "bakers", "--trust", "known")).Lines;

        Snapshooter.Xunit3.Snapshot.Match(lines);
        Assert.False(Directory.Exists(Shelf));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Taken_book_is_found_by_every_later_command_and_goes_as_a_whole(bool zipped)
    {
        if (zipped)
            ZipFile.CreateFromDirectory(Folder, Zip);
        var own = Own();

        await Ran("take", zipped ? Zip : Folder, "--as", "bakers", "--trust", "stranger", "--write");

        var found = (await Ran("find", "ticks")).Output;
        Assert.Contains("b-7", found, StringComparison.Ordinal);
        Assert.Contains("from the book bakers", found, StringComparison.Ordinal);
        Assert.Contains("Dead since the flood", (await Ran("note", "bakers-2024-001")).Output, StringComparison.Ordinal);
        Assert.Contains("C-1, silent", (await Ran("note", "2024-001")).Output, StringComparison.Ordinal);
        Assert.DoesNotContain("b-8", (await Ran("shelf")).Output, StringComparison.Ordinal);
        Assert.Contains("stranger, taken 2026-11-02", (await Ran("take")).Output, StringComparison.Ordinal);
        Assert.Contains("0 errors", (await Ran("check")).Output, StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(Shelf, "bakers", "bench.yaml")));

        await Ran("take", "--remove", "bakers");
        Assert.DoesNotContain("b-7", (await Ran("find", "ticks")).Output, StringComparison.Ordinal);
        Assert.Equal(own, Own());
        Assert.Empty(Directory.GetFileSystemEntries(Shelf));
    }

    [Fact]
    public async Task Taken_jobs_count_by_trust_and_the_answer_names_their_book()
    {
        foreach (var n in Enumerable.Range(1, 8))
            Theirs($"jobs/more-{n}.md", Job($"m-{n}", $"Dead {n}"));
        var before = await Chance();

        await Ran("take", Folder, "--as", "bakers", "--trust", "stranger", "--write");
        var strangers = await Chance();
        Assert.Contains("from the book bakers", (await Ran("ask", "blank", "--machine", "aldine-c1")).Output, StringComparison.Ordinal);
        await Ran("take", "--remove", "bakers");
        Assert.Equal(before, await Chance(), 12);
        await Ran("take", Folder, "--as", "bakers", "--trust", "known", "--write");
        var known = await Chance();

        Assert.True(before < strangers && strangers < known, $"{before} {strangers} {known}");
    }

    [Fact]
    public async Task Name_in_use_and_missing_trust_are_refused()
    {
        await Ran("take", Folder, "--as", "bakers", "--trust", "known", "--write");

        Assert.Contains("A book called “bakers” is open already", (await bench.Run("take", Folder, "--as", "bakers", "--trust", "known", "--write")).Error, StringComparison.Ordinal);
        Assert.Contains("--trust known", (await bench.Run("take", Folder, "--as", "others")).Error, StringComparison.Ordinal);
        Assert.Contains("Taken are bakers", (await bench.Run("take", "--remove", "others")).Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("../outside.md", "leads out of the folder")]
    [InlineData("a/../../outside.md", "leads out of the folder")]
    [InlineData("/outside.md", "leads out of the folder")]
    [InlineData("C:/outside.md", "leads out of the folder")]
    [InlineData("..\\outside.md", "leads out of the folder")]
    public async Task Zip_with_a_name_that_leads_out_is_refused_whole(string name, string said)
    {
        Write(zip => Add(zip, name, Encoding.UTF8.GetBytes(Job("x-1", "x"))));

        await Refused(said);
        Assert.False(File.Exists(bench.File("small", "../outside.md")));
    }

    [Fact]
    public async Task Zip_with_a_link_is_refused_whole()
    {
        Write(zip => Add(zip, "photo.md", "/etc/hostname"u8.ToArray()).ExternalAttributes = unchecked((int)0xA1FF0000));

        await Refused("is a link to another place");
    }

    [Fact]
    public async Task Zip_that_swells_is_refused_whole()
    {
        Write(zip => Add(zip, "big.jpg", new byte[8_000_000]));

        await Refused("would swell to 8000000 bytes");
    }

    /// <summary>Each file may swell as a small one may; together they would fill the disk.</summary>
    [Fact]
    public async Task Zip_of_many_small_files_that_swells_as_a_whole_is_refused_whole()
    {
        Write(zip => Assert.All(Enumerable.Range(0, 40), n => Add(zip, $"jobs/{n}.md", Encoding.UTF8.GetBytes(Job($"z-{n}", "z") + new string('0', 900_000)))));

        await Refused("over 30 times its size");
    }

    [Fact]
    public async Task Zip_with_one_name_twice_is_refused_whole()
    {
        Write(zip => Add(zip, "JOBS/a.md", "x"u8.ToArray()));

        await Refused("Two files are called");
    }

    [Fact]
    public async Task Broken_zip_is_refused()
    {
        File.WriteAllText(Zip, "PK no zip");

        await Refused("neither a folder nor a sound zip");
    }

    [Fact]
    public async Task Link_in_a_folder_is_refused()
    {
        File.CreateSymbolicLink(Path.Combine(Folder, "secret.md"), "/etc/hostname");

        Assert.Contains("is a link", (await bench.Run("take", Folder, "--as", "bakers", "--trust", "known", "--write")).Error, StringComparison.Ordinal);
    }

    private async Task<double> Chance() =>
        (await bench.Json("ask", "blank", "--machine", "aldine-c1")).GetProperty("answer").GetProperty("causes").EnumerateArray()
            .Single(c => c.GetProperty("fault").GetString() == "backup-cap-shorted").GetProperty("probability").GetDouble();

    private async Task Refused(string said)
    {
        var taken = await bench.Run("take", Zip, "--as", "bakers", "--trust", "known", "--write");
        Assert.Equal(3, taken.Code);
        Assert.Contains(said, taken.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(Shelf, "bakers")));
        Assert.Equal("No book was taken", (await Ran("take")).Lines[0]);
    }

    /// <summary>A sound zip with one thing more.</summary>
    private void Write(Action<ZipArchive> more)
    {
        ZipFile.CreateFromDirectory(Folder, Zip);
        using var zip = ZipFile.Open(Zip, ZipArchiveMode.Update);
        more(zip);
    }

    private static ZipArchiveEntry Add(ZipArchive zip, string name, byte[] bytes)
    {
        var entry = zip.CreateEntry(name);
        using var stream = entry.Open();
        stream.Write(bytes);
        return entry;
    }

    private void Theirs(string path, string text)
    {
        var file = Path.Combine(Folder, path);
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        File.WriteAllText(file, text);
    }

    private static string Job(string id, string name) =>
        $"---\nformat: 1\nkind: job\nid: \"{id}\"\nname: {name}\ndevice: aldine-c1\nopened: 2023-01-01T10:00:00+00:00\ncauses:\n  - {{fault: backup-cap-shorted, grade: told}}\noutcome: mended\nclosed: 2023-01-02T10:00:00+00:00\n---\n";

    private List<string> Own() =>
        [.. Directory.EnumerateFiles(bench.Folder("small"), "*.md", SearchOption.AllDirectories).Order(StringComparer.Ordinal).Select(f => f + File.ReadAllText(f))];

    private async Task<Said> Ran(params string[] args)
    {
        var said = await bench.Run(args);
        Assert.True(said.Code == 0, said.Errors);
        return said;
    }
}
