using System.Diagnostics.CodeAnalysis;
using System.Text;
using Triage.Notes.Parsing;

namespace Triage.Notes.Tests.Parsing;

/// <summary>What can be wrong with a file as a whole: named with its place, never thrown, and never lost to search.</summary>
public sealed class BadInputTests
{
    private const string Good = "---\nformat: 1\nkind: device-class\nid: radio\nname: Radio\n---\nText.\n";

    [Fact]
    public void AByteOrderMarkIsTolerated()
    {
        var reading = Read("\uFEFF" + Good);

        Assert.Empty(reading.Problems);
        Assert.Equal("Text.\n", reading.Note!.Body);
    }

    [Fact]
    public void CarriageReturnsAreTolerated()
    {
        var reading = Read(Good.Replace("\n", "\r\n", StringComparison.Ordinal));

        Assert.Empty(reading.Problems);
        Assert.Equal("Radio", reading.Note!.Name);
    }

    [Fact]
    public void Latin1BytesAreNamedByPlaceAndStaySearchable()
    {
        var reading = NoteReader.Read("b", "n.md", Encoding.Latin1.GetBytes(Good.Replace("Radio", "Gerät", StringComparison.Ordinal)));

        AssertRefused(reading, 5, 10, NoteProblems.NotUtf8(0xE4));
        Assert.Contains("Gerät", reading.Text.Content, StringComparison.Ordinal);
    }

    [Fact]
    public void Utf16IsNamed() =>
        AssertRefused(NoteReader.Read("b", "n.md", (byte[])[.. Encoding.Unicode.Preamble, .. Encoding.Unicode.GetBytes(Good)]), 1, 1, NoteProblems.NotUtf8(0xFF));

    /// <summary>Amounts that no answer can be worked out from are named where they stand and left out.</summary>
    [Theory]
    [InlineData("every: 0", "`every` is 0")]
    [InlineData("every: 1e308", "`every` is 1e308")]
    [InlineData("every: -3", "less than 0")]
    [InlineData("every: .nan", "should be a number")]
    public void AmountsThatCannotBeAreNamed(string field, string said)
    {
        var reading = Read($"---\nformat: 2\nkind: fault\nid: hum\nname: Hum\nshows:\n  - {{finding: hum, chance: often, {field}}}\n---\n");

        Assert.Single(reading.Problems, p => p.Line == 7 && p.What.Contains(said, StringComparison.Ordinal));
        Assert.All(Assert.IsType<Kinds.Fault>(reading.Note).Shows, s => Assert.Null(s.EveryMinutes));
    }

    [Fact]
    public void FiftyMegabytesAreNotRead()
    {
        var folder = Directory.CreateTempSubdirectory();
        using (var file = File.Create(Path.Combine(folder.FullName, "big.md")))
        {
            file.Write(Encoding.UTF8.GetBytes(Good));
            file.SetLength(50_000_000);
        }

        var reading = BookReader.ReadFile("b", folder.FullName, "big.md");

        AssertRefused(reading, 0, 0, NoteProblems.TooLarge(50_000_000, 2_000_000));
        Assert.StartsWith(Good, reading.Text.Content, StringComparison.Ordinal);
        folder.Delete(recursive: true);
    }

    [Fact]
    public void AMillionAliasesAreStopped()
    {
        var aliases = string.Concat(Enumerable.Repeat("*a,", 1_000_000));
        var bytes = Encoding.UTF8.GetBytes($"---\na: &a x\nb: [{aliases}]\n---\n");

        var reading = NoteReader.Read("b", "n.md", bytes, YamlLimits.Default with { Bytes = 10_000_000 });

        AssertRefused(reading, 3, 305, NoteProblems.TooManyAliases(100));
    }

    /// <summary>Nine lists of nine aliases each would write out to 9⁹ values ("billion laughs").</summary>
    [Fact]
    public void AliasesThatMultiplyAreStopped()
    {
        var lists = Enumerable.Range(1, 9).Select(i => $"a{i}: &a{i} [{string.Join(", ", Enumerable.Repeat($"*a{i - 1}", 9))}]\n");

        var reading = Read($"---\na0: &a0 x\n{string.Concat(lists)}---\n");

        Assert.Equal(NoteProblems.TooManyNodes(200_000).What, Assert.Single(reading.Problems).What);
    }

    [Fact]
    public void AnAliasOfItselfIsStopped() =>
        AssertRefused(Read("---\na: &a [*a]\n---\n"), 2, 8, NoteProblems.UnknownAlias("a"));

    [Fact]
    public void DeepNestingIsStopped() =>
        AssertRefused(Read($"---\na: {new string('[', 100_000)}\n---\n"), 2, 23, NoteProblems.TooDeep(20));

    [Fact]
    public void ConflictMarkersAreNamed()
    {
        var conflict = Good.Replace("name: Radio\n", "<<<<<<< HEAD\nname: Radio\n=======\nname: Tuner\n>>>>>>> theirs\n", StringComparison.Ordinal);

        AssertRefused(Read(conflict), 5, 1, NoteProblems.ConflictMarker());
        AssertRefused(Read($"<<<<<<< HEAD\n{Good}=======\n{Good}>>>>>>> theirs\n"), 1, 1, NoteProblems.ConflictMarker());
    }

    [Theory]
    [InlineData("a:\n\t- b\n", 3, 1, "Tab")]
    [InlineData("name: one: two\n", 2, 10, "StrayColon")]
    [InlineData("name: \"open\n", 0, 0, "OpenQuote")]
    [InlineData("list: [a, b\nname: x\n", 0, 0, "OpenBracket")]
    [InlineData("a: 1\n  b: 2\n", 0, 0, "StrayColon")]
    [InlineData("a:\n  - b\n c: d\n", 0, 0, "NotAField")]
    [InlineData("a: 1\njust words\nb: 2\n", 0, 0, "NotAField")]
    [InlineData("a: 1\nb\n", 3, 1, "NotAField")]
    [InlineData("a: @home\n", 2, 4, "StartsWithSymbol")]
    [InlineData("a: 1\n--- b\n", 0, 0, "SecondDocument")]
    [InlineData("- a\n- b\n", 2, 1, "NotFields")]
    [InlineData("[a]: b\n", 2, 1, "FieldNameNotText")]
    [InlineData("# nothing\n", 1, 1, "FrontMatterEmpty")]
    public void BrokenYamlIsSaidInPlainWords(string yaml, int line, int column, string expected)
    {
        var reading = Read($"---\n{yaml}---\nsearch me\n");

        var problem = Assert.Single(reading.Problems);
        var text = Text(expected);
        Assert.Equal((Severity.Error, text.What, text.Instead), (problem.Severity, problem.What, problem.Instead));
        Assert.InRange(problem.Line, 1, 5);
        if (line > 0)
        {
            Assert.Equal((line, column), (problem.Line, problem.Column));
        }

        Assert.Null(reading.Note);
        Assert.Equal("search me\n", reading.Text.Body);
    }

    [Fact]
    public void AFieldWrittenTwiceIsNamedWithBothLines() =>
        AssertRefused(Read(Good.Replace("name: Radio", "name: Radio\nid: tuner", StringComparison.Ordinal)), 6, 1, NoteProblems.DuplicateField("id", 4));

    [Fact]
    public void FrontMatterThatNothingEndsIsNamed() =>
        AssertRefused(Read("---\nformat: 1\n"), 1, 1, NoteProblems.FrontMatterNotClosed());

    [Theory]
    [InlineData("")]
    [InlineData("# Just Markdown\n\n---\n\nformat: 9\n")]
    [InlineData("<<<<<<< quoted\n")]
    public void MarkdownWithoutFrontMatterIsLeftAlone(string content)
    {
        var reading = Read(content);

        Assert.Empty(reading.Problems);
        Assert.Null(reading.Note);
        Assert.False(reading.IsNote);
    }

    [Fact]
    public void ANewerFormatIsSearchableOnly()
    {
        var reading = Read(Good.Replace("format: 1", "format: 9", StringComparison.Ordinal));

        AssertRefused(reading, 2, 9, NoteProblems.NewerFormat("9"));
        Assert.False(reading.Text.Editable);
        Assert.Equal("Text.\n", reading.Text.Body);
    }

    [FsCheck.Xunit.Property(MaxTest = 500)]
    [SuppressMessage("Design", "CA1031", Justification = "any exception is the failure")]
    public void NothingThrows(byte[] noise, bool framed)
    {
        byte[] bytes = framed ? [.. "---\nkind: job\n"u8, .. noise, .. "\n---\n"u8] : noise;

        Assert.NotNull(NoteReader.Read("b", "n.md", bytes).Text);
    }

    [FsCheck.Xunit.Property(MaxTest = 1000)]
    public void ADamagedNoteNeverThrows(int example, int at, char with)
    {
        var examples = FormatPageTests.ExamplesOfPage().ToList();
        var note = new StringBuilder(examples[(example & int.MaxValue) % examples.Count]);
        note[(at & int.MaxValue) % note.Length] = with;

        Assert.NotNull(NoteReader.Read("b", "n.md", Encoding.UTF8.GetBytes(note.ToString())).Text);
    }

    private static ProblemText Text(string name) => (ProblemText)typeof(NoteProblems).GetMethod(name)!.Invoke(null, null)!;

    private static void AssertRefused(NoteReading reading, int line, int column, ProblemText text)
    {
        Assert.Null(reading.Note);
        Assert.True(reading.IsNote);
        Assert.Equal(new Problem(reading.Place.Path, line, column, Severity.Error, text.What, text.Instead), Assert.Single(reading.Problems));
    }

    private static NoteReading Read(string content) => NoteReader.Read("b", "n.md", Encoding.UTF8.GetBytes(content));
}
