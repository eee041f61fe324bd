using System.Text;
using System.Text.Json;

namespace Triage.Cli.Tests.Commands;

/// <summary>Invented tables: shown, brought in, brought in again, and used.</summary>
public sealed class ImportTests : IDisposable
{
    private const string Map = """
        { "id": { "prefix": "cafe-", "column": "Nr" }, "class": { "id": "cafe-thing", "name": "Thing from the repair evening" },
          "closed": { "column": "Day" }, "complaint": "Problem", "outcome": { "column": "State", "values": { "mended": "mended" } } }
        """;

    /// <summary>As a public log of repair evenings might be: several languages, empty cells, no cause known.</summary>
    private const string Log = """
        id_no,event_date,country,product_category,brand,product_age,problem,repair_status,barrier,language
        e1,2023-04-01,DEU,Kaffeemaschine,Wemmel,7,"läuft nicht, brummt nur",Fixed,,de
        e2,2023-04-01,BEL,Lamp,Ostara,,"knippert, soms uit",Repairable,Spare parts too dear,nl
        e3,2023-05-06,FRA,Lamp,,12,ne s'allume plus,End of life,"No way to open it",fr
        e4,2023-05-06,GBR,,Brunno,3,"smells of burning; ""pop"" heard",Unknown,,en
        e5,2023-05-07,GBR,Hand mixer,Ostara,3,,Fixed,,en

        """;

    private readonly TestBench bench = TestBench.Small();

    private string Table => bench.File("small", "../evenings.csv");

    private string MapFile => bench.File("small", "../map.json");

    public void Dispose() => bench.Dispose();

    [Fact]
    public async Task WithoutWrite_NothingIsWritten_AndWithItASecondRunAddsNothing()
    {
        File.WriteAllText(Table, "Nr,Day,Problem,State\n1,2024-03-01,\"=läuft nicht,\nbrummt\",mended\n2,never,hums,mended\n");
        File.WriteAllText(MapFile, Map);

        var preview = await Ran("import", Table, "--map", MapFile);
        Assert.Contains("=läuft nicht", preview.Output, StringComparison.Ordinal);
        Assert.Contains("row 2, line 4", preview.Output, StringComparison.Ordinal);
        Assert.False(Directory.Exists(bench.File("small", "imported")));

        var written = await Ran("import", Table, "--map", MapFile, "--write");
        Assert.Contains("Brought in", written.Output, StringComparison.Ordinal);
        Assert.Contains("\n2,“never” is no date", File.ReadAllText(bench.File("small", "imported/evenings.rejects.csv")), StringComparison.Ordinal);

        var again = await Ran("import", Table, "--map", MapFile, "--write");
        Assert.Contains("Nothing new was brought in", again.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("utf-8", ',')]
    [InlineData("utf-16", ';')]
    [InlineData("utf-16BE", '|')]
    [InlineData("windows-1252", '\t')]
    public async Task A_table_never_seen_before_comes_in_with_the_suggested_map(string encoding, char delimiter)
    {
        File.WriteAllBytes(Table, Encoded(Log.Replace(", ", "; ", StringComparison.Ordinal).Replace(',', delimiter), encoding));

        File.WriteAllText(MapFile, (await Ran("import", Table, "--suggest")).Output);
        var written = await Ran("import", Table, "--map", MapFile, "--write");

        Assert.Matches(@"new jobs\s+5\n", written.Output);
        var job = await bench.Json("note", "evenings-e1");
        var text = job.GetProperty("text").GetString()!;
        Assert.Contains("outcome: mended", text, StringComparison.Ordinal);
        Assert.Contains("läuft nicht", text, StringComparison.Ordinal);
        Assert.Contains("country: DEU", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Suggestion_is_read_by_a_person()
    {
        File.WriteAllText(Table, Log);

        Snapshooter.Xunit3.Snapshot.Match((await Ran("import", Table, "--suggest")).Lines);
    }

    [Fact]
    public async Task Preview_says_what_becomes_of_each_column()
    {
        File.WriteAllText(Table, Log);
        File.WriteAllText(MapFile, (await Ran("import", Table, "--suggest")).Output);

        Snapshooter.Xunit3.Snapshot.Match((await Ran("import", Table, "--map", MapFile)).Lines);
    }

    [Fact]
    public async Task Jobs_without_a_cause_are_found_but_teach_no_cause()
    {
        var before = await Causes();
        File.WriteAllText(Table, Log);
        File.WriteAllText(MapFile, (await Ran("import", Table, "--suggest")).Output);
        await Ran("import", Table, "--map", MapFile, "--write");

        Assert.Contains("evenings-e2", (await Ran("find", "knippert")).Output, StringComparison.Ordinal);
        Assert.Equal(before, await Causes());
        await Ran("review");
        await Ran("ask", "--machine", "Lamp", "knippert");
    }

    [Fact]
    public async Task Zero_bytes_and_open_quotes_name_the_row()
    {
        File.WriteAllText(MapFile, Map);
        File.WriteAllText(Table, "Nr,Day,Problem,State\n1,2024-03-01,hums,mended\n2,2024-03-01,a\0b,mended\n");
        Assert.Contains("row 2, line 3: it holds a zero byte", (await Ran("import", Table, "--map", MapFile)).Output.ReplaceLineEndings(" ").Replace("  ", " ", StringComparison.Ordinal), StringComparison.Ordinal);

        File.WriteAllText(Table, "Nr,Day,Problem,State\n1,2024-03-01,hums,mended\n2,2024-03-01,\"ab,mended\n");
        var refused = await bench.Run("import", Table, "--map", MapFile, "--write");
        Assert.Equal(3, refused.Code);
        Assert.Contains("the row on line 3 does not end", refused.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_a_map_the_way_to_one_is_said()
    {
        File.WriteAllText(Table, Log);

        var refused = await bench.Run("import", Table);

        Assert.Contains("triage import --suggest", refused.Error, StringComparison.Ordinal);
    }

    private async Task<string> Causes()
    {
        var answer = await bench.Json("ask", "--machine", "Aldine C-1", "no chime");
        return JsonSerializer.Serialize(answer.GetProperty("answer").GetProperty("causes"));
    }

    private async Task<Said> Ran(params string[] args)
    {
        var said = await bench.Run(args);
        Assert.True(said.Code == 0, said.Errors);
        return said;
    }

    private static byte[] Encoded(string text, string encoding)
    {
        var name = CodePagesEncodingProvider.Instance.GetEncoding(encoding) ?? Encoding.GetEncoding(encoding);
        return name.GetBytes(text);
    }
}
