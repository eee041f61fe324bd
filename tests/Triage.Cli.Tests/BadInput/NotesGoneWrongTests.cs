using System.Text;

namespace Triage.Cli.Tests.BadInput;

/// <summary>One note is wrong: the check names file, line and column, and everything else goes on working.</summary>
public sealed class NotesGoneWrongTests : IDisposable
{
    private readonly TestBench bench = TestBench.Small();

    public void Dispose() => bench.Dispose();

    [Theory]
    [InlineData("share: 1.2", 7, "1.2")]
    [InlineData("mends: [{fix: mend-it, name: Mend it, works: often, money: -4}]", 7, "-4")]
    [InlineData("shows: [{finding: chime, value: silent, chance: often}", 8, "")]
    [InlineData("shows: [{finding: no-such-finding, chance: often}]", 7, "no-such-finding")]
    [InlineData("also:\n\t- tabbed", 8, "tab")]
    public async Task A_field_is_named_with_line(string field, int line, string says)
    {
        Write($"---\nformat: 1\nkind: fault\nid: wrong-one\nname: Wrong one\nrole: settings\n{field}\n---\n");

        var said = await bench.Run("check");

        Assert.Contains(said.Lines, l => l.Contains($"wrong.md:{line}:", StringComparison.Ordinal) && l.Contains(says, StringComparison.OrdinalIgnoreCase));
        await TheRestAnswers();
    }

    [Fact]
    public async Task An_error_ends_the_check_with_1_and_a_sound_book_with_0()
    {
        Assert.Equal(0, (await bench.Run("check")).Code);
        Write("---\nformat: 1\nkind: fault\nid: wrong-one\nname: [unclosed\n---\n");

        Assert.Equal(1, (await bench.Run("check")).Code);
    }

    [Fact]
    public async Task A_newer_format_is_named_and_not_used()
    {
        Write("---\nformat: 9\nkind: fault\nid: wrong-one\nname: Wrong one\n---\n");

        Assert.Contains("9", await Problem(), StringComparison.Ordinal);
        Assert.Equal(3, (await bench.Run("note", "wrong-one")).Code);
        await TheRestAnswers();
    }

    [Fact]
    public async Task Git_conflict_markers_are_named()
    {
        Write("---\nformat: 1\nkind: fault\nid: wrong-one\n<<<<<<< ours\nname: One\n=======\nname: Other\n>>>>>>> theirs\n---\n");

        Assert.Contains("wrong.md:5:", await Problem(), StringComparison.Ordinal);
        await TheRestAnswers();
    }

    [Fact]
    public async Task Two_notes_with_one_id_are_both_named_and_neither_is_used()
    {
        Write("---\nformat: 1\nkind: finding\nid: clock-face\nname: Clock face again\n---\n");

        var said = await bench.Run("check");

        Assert.Equal(1, said.Code);
        Assert.Contains(said.Lines, l => l.Contains("wrong.md:", StringComparison.Ordinal));
        Assert.Contains(said.Lines, l => l.Contains("clock-face.md:", StringComparison.Ordinal));
        await TheRestAnswers();
    }

    [Fact]
    public async Task A_byte_order_mark_does_no_harm()
    {
        Write([0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes("---\nformat: 1\nkind: finding\nid: smell\nname: Smell\nsays: [smells]\n---\n")]);

        Assert.Equal(0, (await bench.Run("check")).Code);
        Assert.Equal(0, (await bench.Run("note", "smell")).Code);
    }

    [Fact]
    public async Task Latin_1_bytes_are_named()
    {
        Write(Encoding.Latin1.GetBytes("---\nformat: 1\nkind: finding\nid: smell\nname: Brandgeruch, verkürzt\n---\n"));

        Assert.Contains("UTF-8", await Problem(), StringComparison.Ordinal);
        await TheRestAnswers();
    }

    [Fact]
    public async Task A_note_of_50_MB_is_named_and_passed_over()
    {
        Write([.. Encoding.UTF8.GetBytes("---\nformat: 1\nkind: finding\nid: smell\nname: Smell\n---\n"), .. new byte[50_000_000]]);

        await Problem();
        await TheRestAnswers();
    }

    [Fact]
    public async Task A_million_aliases_are_named_and_passed_over()
    {
        Write($"---\nformat: 1\nkind: finding\nid: smell\nname: &n Smell\nalso: [{string.Join(", ", Enumerable.Repeat("*n", 1_000_000))}]\n---\n");

        await Problem();
        await TheRestAnswers();
    }

    [Fact]
    public async Task A_link_to_nothing_is_named()
    {
        Write("---\nformat: 1\nkind: finding\nid: smell\nname: Smell\nsays: [smells]\n---\nSee [that](note:no-such-note).\n");

        Assert.Contains("no-such-note", await Problem(), StringComparison.Ordinal);
        await TheRestAnswers();
    }

    [Fact]
    public async Task A_folder_that_vanishes_while_a_step_is_recorded_is_said_and_nothing_is_half_written()
    {
        var said = await bench.RunOn(new VanishingClock(bench), "line", "2026-001", "C3 short");

        Assert.Equal(5, said.Code);
        Assert.Contains("is no longer there. Nothing was written.", said.Error, StringComparison.Ordinal);
        Directory.Move(bench.Folder("small") + "-away", bench.Folder("small"));
        Assert.Single((await bench.Json("job", "2026-001")).GetProperty("job").All("log"));
    }

    [Fact]
    public async Task A_folder_that_is_not_there_is_said()
    {
        Directory.Move(bench.Folder("small"), bench.Folder("small") + "-away");

        var said = await bench.Run("shelf");

        Assert.Equal(5, said.Code);
        Assert.Contains("The folder of book “small” is not there", said.Error, StringComparison.Ordinal);
    }

    private void Write(string text) => Write(Encoding.UTF8.GetBytes(text));

    private void Write(byte[] bytes) => File.WriteAllBytes(bench.File("small", "wrong.md"), bytes);

    private async Task<string> Problem()
    {
        var said = await bench.Run("check");
        return Assert.Single(said.Lines, l => l.Contains("wrong.md:", StringComparison.Ordinal));
    }

    private async Task TheRestAnswers()
    {
        var asked = await bench.Json("ask", "--machine", "Aldine C-1", "it does not chime");
        Assert.Equal("backup-cap-shorted", asked.Causes()[0]);
    }

    /// <summary>The folder goes between reading the book and writing the step: a drive pulled out.</summary>
    private sealed class VanishingClock(TestBench bench) : TimeProvider
    {
        private bool gone;

        public override DateTimeOffset GetUtcNow()
        {
            if (!gone)
                Directory.Move(bench.Folder("small"), bench.Folder("small") + "-away");
            gone = true;
            return bench.Clock.GetUtcNow();
        }
    }
}
