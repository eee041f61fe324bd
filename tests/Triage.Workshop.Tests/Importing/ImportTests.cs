using System.Text;
using Triage.Notes.Kinds;
using Xunit;

namespace Triage.Workshop.Tests.Importing;

public sealed class ImportTests : IDisposable
{
    private const string Radios = """
        {
          // a workshop's own list
          "delimiter": ";", "encoding": "iso-8859-2", "date-format": "dd.MM.yyyy",
          "id": { "prefix": "rs-", "column": "Nr" },
          "class": { "id": "radio-set", "name": "Radio set" },
          "device": "Gerät", "opened": { "column": "Eingang" }, "closed": { "column": "Fertig" },
          "complaint": "Klage", "cause": "Ursache", "grade": "swapped",
          "findings": [
            { "column": "Skala", "values": ["hell", "trüb", "dunkel"], "order": "ordered" },
            { "column": "Ton" },
          ],
          "text": ["Bemerkung"],
        }
        """;

    private const string Header = "Nr;Gerät;Eingang;Fertig;Klage;Ursache;Skala;Ton;Bemerkung\n";

    private readonly Table table = new();

    public void Dispose() => table.Dispose();

    [Fact]
    public void GermanAndPolishText_InAnOldEncoding_StaysAsItIs()
    {
        table.With(Header + "7;Ostara 12;03.02.1998;05.02.1998;\"Kein Ton; brummt nur,\nSkala trüb\";Elko ausgetrocknet;trüb;brummt;\"Właściciel: \"\"gra cicho\"\"\"\n", Latin2);

        var result = table.BringIn(Table.Map(Radios));

        var job = table.Job("rs-7");
        Assert.Equal((1, 1, 0), (result.Rows, result.Jobs, result.Rejected));
        Assert.Equal("Kein Ton; brummt nur,\nSkala trüb", job.Complaint);
        Assert.Contains("Bemerkung: Właściciel: \"gra cicho\"", job.Body, StringComparison.Ordinal);
        Assert.Equal(new DateTimeOffset(1998, 2, 5, 12, 0, 0, TimeSpan.Zero), job.Closed);
        var notes = table.Read().Notes;
        Assert.Equal("Elko ausgetrocknet", notes.OfType<Fault>().Single(f => f.Id == job.Causes[0].Fault).Name);
        Assert.Equal(Grade.Swapped, job.Causes[0].Grade);
        Assert.Equal("Ostara 12", notes.OfType<Device>().Single(d => d.Id == job.Device).Name);
        Assert.Equal(["Skala hell", "Skala trüb", "Skala dunkel"], notes.OfType<Finding>().Single(f => f.Name == "Skala").Values.Select(v => v.Name));
        Assert.Empty(table.Read().Problems);
    }

    [Fact]
    public void Latin1_IsReadAsTheMapSays_AndWrongBytesAreRejected()
    {
        const string text = "Nr;Tag;Klage\n1;2020-01-02;überhitzt\n";
        const string map = """{ "delimiter": ";", "encoding": "ENCODING", "id": { "column": "Nr" , "prefix": "l-" }, "class": { "id": "radio-set", "name": "Radio set" }, "closed": { "column": "Tag" }, "complaint": "Klage" }""";
        table.With(text, Encoding.Latin1);

        var wrong = table.Preview(Table.Map(map.Replace("ENCODING", "utf-8", StringComparison.Ordinal)));
        table.BringIn(Table.Map(map.Replace("ENCODING", "latin1", StringComparison.Ordinal)));

        Assert.Contains("bytes that are not utf-8", Assert.Single(wrong.Rejects).Reason, StringComparison.Ordinal);
        Assert.Equal("überhitzt", table.Job("l-1").Complaint);
    }

    [Fact]
    public void EmptyCells_AreNotChecked_NeverNormal()
    {
        table.With(Header + "1;Ostara 12;03.02.1998;05.02.1998;x;;;leise;\n", Latin2);

        table.BringIn(Table.Map(Radios));

        var job = table.Job("rs-1");
        Assert.Empty(job.Causes);
        Assert.Equal("leise", Assert.IsType<Saw>(Assert.Single(job.Log)).Value);
    }

    [Fact]
    public void RowsThatCannotBeUsed_AreRejectedWithTheReason_AndComeInOnceMended()
    {
        table.With(Header
            + "1;Ostara 12;31.02.1998;05.02.1998;x;;;;\n"
            + "2;Ostara 12;03.02.1998;05.02.1998;x;;grell;;\n"
            + "3;Ostara 12;03.02.1998\n"
            + "4;Ostara 12;09.02.1998;05.02.1998;x;;;;\n"
            + "5;Ostara 12;03.02.1998;05.02.1998;a 5\" speaker;;;;\n"
            + "5;Ostara 12;03.02.1998;05.02.1998;again;;;;\n"
            + ";Ostara 12;03.02.1998;05.02.1998;x;;;;\n", Latin2);

        var result = table.BringIn(Table.Map(Radios));

        var rejects = File.ReadAllLines(result.RejectsFile!);
        Assert.Equal((1, 6), (result.Jobs, result.Rejected));
        Assert.Equal("a 5\" speaker", table.Job("rs-5").Complaint);
        Assert.Contains("“31.02.1998” is no date of the form dd.MM.yyyy", rejects[1], StringComparison.Ordinal);
        Assert.Contains("“grell” is no value of Skala; its values are hell, trüb, dunkel", rejects[2], StringComparison.Ordinal);
        Assert.Contains("it has 3 cells where the header has 9", rejects[3], StringComparison.Ordinal);
        Assert.Contains("before it was opened", rejects[4], StringComparison.Ordinal);
        Assert.Contains("its id rs-5 is that of row 5", rejects[5], StringComparison.Ordinal);
        Assert.Contains("“Nr” is empty", rejects[6], StringComparison.Ordinal);

        File.WriteAllText(table.File, string.Join('\n', rejects[0], rejects[1].Replace("31.02.1998;05", "01.02.1998;05", StringComparison.Ordinal)));
        var again = table.BringIn(Table.Map(Radios) with { Encoding = "utf-8" });
        Assert.Equal((1, 0), (again.Jobs, again.Rejected));
        Assert.Equal(1, table.Job("rs-1").Opened!.Value.Day);
    }

    [Fact]
    public void SecondRun_AddsNothing()
    {
        table.With(Header + "1;Ostara 12;03.02.1998;05.02.1998;x;Elko;hell;leise;\n2;Brunno;03.02.1998;;y;;;;\n", Latin2);
        table.BringIn(Table.Map(Radios));
        var before = table.Files();

        var second = table.BringIn(Table.Map(Radios));

        Assert.Equal((0, 2, null), (second.Jobs, second.AlreadyThere, second.Place));
        Assert.Equal(before, table.Files());
        Assert.True(table.Job("rs-2").IsOpen);
    }

    [Fact]
    public void LaterTable_UsesTheNotesThatAreThere()
    {
        table.With(Header + "1;Ostara 12;03.02.1998;05.02.1998;x;Elko;hell;;\n", Latin2).BringIn(Table.Map(Radios));
        table.With(Header + "2;ostara 12;03.02.1998;05.02.1998;x;Elko;dunkel;;\n", Latin2);

        var later = table.BringIn(Table.Map(Radios));

        Assert.Equal((1, 0), (later.Jobs, later.NewNotes.Length));
        Assert.Equal(table.Job("rs-1").Causes, table.Job("rs-2").Causes);
        Assert.Equal(table.Job("rs-1").Device, table.Job("rs-2").Device);
        Assert.Equal("dunkel", table.Job("rs-2").Log.OfType<Saw>().Single().Value);
    }

    [Fact]
    public void Preview_SaysWhatRunDoes_AndWritesNothing()
    {
        table.With(Header + "1;Ostara 12;03.02.1998;05.02.1998;x;Elko;hell;leise;\n2;Ostara 12;never;05.02.1998;x;Röhre;hell;leise;\n", Latin2);

        var preview = table.Preview(Table.Map(Radios));

        Assert.False(Directory.Exists(table.Book));
        Assert.Equal((2, 1, 1), (preview.Rows, preview.Jobs, preview.Rejected));
        Assert.Equal((2, 3L), (preview.Rejects[0].Row, preview.Rejects[0].Line));
        Assert.Contains("complaint: x", Assert.Single(preview.FirstNotes), StringComparison.Ordinal);
        Assert.Equal(table.BringIn(Table.Map(Radios)).NewNotes, preview.NewNotes);
        Assert.Equal(["Elko", "Ostara 12", "Radio set", "Skala", "Ton"], preview.NewNotes.Select(n => n.Name).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void QuoteThatNeverCloses_BringsNothingIn()
    {
        table.With(Header + "1;Ostara 12;03.02.1998;05.02.1998;\"x;;;;\n2;Ostara 12;03.02.1998;05.02.1998;x;;;;\n", Latin2);

        var result = table.Run(Table.Map(Radios));

        Assert.Contains("row on line 2 does not end", result.Refused!.What, StringComparison.Ordinal);
        Assert.Empty(table.Files());
    }

    [Fact]
    public void FreeTextTakenForAFinding_IsRefused_AndLeavesNothing()
    {
        table.With(Header + string.Concat(Enumerable.Range(1, 1300).Select(i => $"{i};;03.02.1998;05.02.1998;x;;;{(i < 1050 ? "a" : "tone " + i)};\n")), Latin2);

        var result = table.Run(Table.Map(Radios));

        Assert.Contains("“Ton” has more than 200 different values", result.Refused!.What, StringComparison.Ordinal);
        Assert.Empty(table.Files());
    }

    [Fact]
    public void WordsColumnValue_AreRecognisedInAComplaint()
    {
        table.With(Header + "1;Ostara 12;03.02.1998;05.02.1998;x;Elko;trüb;leise;\n", Latin2).BringIn(Table.Map(Radios));
        var bench = LiveBench.Open(new() { Books = [new("book", table.Book)], Watch = false });

        var asking = bench.Steps.Ask("radio-set", "Skala trüb, Ton leise");

        Assert.Equal(["Skala trüb", "Ton leise"], asking.Recognition.Findings.Select(f => bench.Current.Notes.Find<Finding>(f.Finding)!.Values.Single(v => v.Id == f.Value).Name).Order(StringComparer.Ordinal));
    }

    private static Encoding Latin2 => CodePagesEncodingProvider.Instance.GetEncoding("iso-8859-2")!;
}
