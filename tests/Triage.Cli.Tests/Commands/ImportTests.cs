namespace Triage.Cli.Tests.Commands;

/// <summary>An invented table, shown, brought in, and brought in again.</summary>
public sealed class ImportTests : IDisposable
{
    private const string Map = """
        { "id": { "prefix": "cafe-", "column": "Nr" }, "class": { "id": "cafe-thing", "name": "Thing from the repair evening" },
          "closed": { "column": "Day" }, "complaint": "Problem", "outcome": { "column": "State", "values": { "mended": "mended" } } }
        """;

    private readonly TestBench bench = TestBench.Small();

    public void Dispose() => bench.Dispose();

    [Fact]
    public async Task WithoutWrite_NothingIsWritten_AndWithItASecondRunAddsNothing()
    {
        var (table, map) = (bench.File("small", "../past.csv"), bench.File("small", "../map.json"));
        File.WriteAllText(table, "Nr,Day,Problem,State\n1,2024-03-01,\"=läuft nicht,\nbrummt\",mended\n2,never,hums,mended\n");
        File.WriteAllText(map, Map);

        var preview = await bench.Run("import", table, "--map", map);
        Assert.True(preview.Code == 0, preview.Errors);
        Assert.Contains("=läuft nicht", preview.Output, StringComparison.Ordinal);
        Assert.Contains("row 2, line 4", preview.Output, StringComparison.Ordinal);
        Assert.False(Directory.Exists(bench.File("small", "imported")));

        var written = await bench.Run("import", table, "--map", map, "--write");
        Assert.True(written.Code == 0, written.Errors);
        Assert.Contains("Brought in", written.Output, StringComparison.Ordinal);

        var again = await bench.Run("import", table, "--map", map, "--write");
        Assert.Contains("Nothing new was brought in", again.Output, StringComparison.Ordinal);
    }
}
