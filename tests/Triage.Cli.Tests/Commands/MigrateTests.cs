namespace Triage.Cli.Tests.Commands;

/// <summary>Notes of format 1 brought to the present format.</summary>
public sealed class MigrateTests : IDisposable
{
    private readonly TestBench bench = TestBench.Small();

    public void Dispose() => bench.Dispose();

    [Fact]
    public async Task Preview_shows_each_line_and_writes_nothing()
    {
        var before = Notes();

        var said = await bench.Run("migrate");

        Assert.Equal(0, said.Code);
        Assert.Contains("small/chime.md:2: format: 1 → format: 2", said.Lines);
        Assert.Equal(before, Notes());
    }

    [Fact]
    public async Task Written_notes_mean_what_they_meant_and_the_old_ones_lie_beside()
    {
        var before = Notes();

        var book = (await bench.Json("migrate", "--write")).All("books").Single();

        Assert.All(Notes(), n => Assert.Equal(before[n.Key].Replace("format: 1", "format: 2", StringComparison.Ordinal), n.Value));
        Assert.Equal(before["chime.md"], await File.ReadAllTextAsync(Path.Combine(book.Text("backup"), "chime.md"), TestContext.Current.CancellationToken));
        Assert.Equal(0, (await bench.Run("check")).Code);
    }

    private Dictionary<string, string> Notes() =>
        Directory.EnumerateFiles(bench.Folder("small"), "*.md").ToDictionary(f => Path.GetFileName(f)!, File.ReadAllText);
}
