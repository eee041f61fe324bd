namespace Triage.Cli.Tests.BadInput;

/// <summary>What was typed does not fit: a clear line on the errors, an exit code that says which, and nothing written.</summary>
public sealed class TypedWronglyTests : IDisposable
{
    private readonly TestBench bench = TestBench.Small();

    public void Dispose() => bench.Dispose();

    [Theory]
    [InlineData(3, "No note knows the machine “Nobody 7”. Name a model that has a note, or its kind: Chime box.", "ask", "--machine", "Nobody 7", "no chime")]
    [InlineData(3, "No complaint was given. Say it in a few words.", "ask", "--machine", "Aldine C-1", "")]
    [InlineData(3, "No complaint was given. Say it in a few words.", "ask", "--machine", "Aldine C-1", "  \t ")]
    [InlineData(3, "The worth is -5, less than nothing. Write 0 or more.", "take-in", "--machine", "Aldine C-1", "no chime", "--worth", "-5")]
    [InlineData(3, "The spending limit is -1, less than nothing. Write 0 or more.", "agree", "2026-001", "--spend", "-1")]
    [InlineData(3, "The price is -2, less than nothing. Write 0 or more.", "part", "2026-001", "backup-cap", "ordered", "--price", "-2")]
    [InlineData(3, "No consent was given. Say at least one of --spend, --may-erase, --originals-back.", "agree", "2026-001")]
    [InlineData(3, "There is no finding “chimes”. Did you mean chime?", "saw", "2026-001", "chimes", "silent")]
    [InlineData(3, "“loud” is no value of Chime. Its values are normal, silent.", "saw", "2026-001", "chime", "loud")]
    [InlineData(3, "There is no job “2031-001”. Did you mean 2024-001?", "job", "2031-001")]
    [InlineData(3, "“00” could be more than one note. Type more of one of these: 2024-001, 2026-001.", "note", "00")]
    [InlineData(3, "Job 2024-001 is closed. Record a follow-up, or take the machine in again as a new job.", "saw", "2024-001", "chime", "silent")]
    [InlineData(3, "Two-key reset erases stored tunes, and the owner has not agreed. Ask the owner or save it first, then record the consent.", "reset", "2026-001", "two-key", "works")]
    [InlineData(3, "Job 2026-001 has no such entry to take back. Look at its time line again: somebody may have taken it back already.", "undo", "2026-001", "7")]
    [InlineData(3, "“sure” is no value of grade. Its values are measured, swapped, hold-unknown, told, hearsay.", "close", "2026-001", "--outcome", "mended", "--cause", "backup-cap-shorted:sure")]
    public async Task Is_refused_with_what_is_wrong_and_what_to_do(int code, string error, params string[] args)
    {
        var before = Written();

        var said = await bench.Run(args);

        Assert.Equal((code, error), (said.Code, said.Error));
        Assert.Equal("", said.Output);
        Assert.Equal(before, Written());
    }

    [Theory]
    [InlineData("effect: “perhaps” is none of works, no-change, worse, not-seen.", "reset", "2026-001", "two-key-reset", "perhaps")]
    [InlineData("--watched: “a while” is no number:", "saw", "2026-001", "chime", "silent", "--watched", "a while")]
    [InlineData("--until: “soon” is no date. Write it as 2024-03-09.", "wait", "2026-001", "part", "--until", "soon")]
    [InlineData("--may-erase: “maybe” is none of yes, no.", "agree", "2026-001", "--may-erase", "maybe")]
    [InlineData("Option '--outcome' is required.", "close", "2026-001")]
    public async Task A_command_line_that_does_not_parse_ends_with_2(string error, params string[] args)
    {
        var said = await bench.Run(args);

        Assert.Equal(2, said.Code);
        Assert.StartsWith(error, said.Errors, StringComparison.Ordinal);
        Assert.Equal($"See triage {args[0]} --help.", said.Error);
    }

    [Theory]
    [InlineData("12")]
    [InlineData("12 furlong")]
    public async Task A_reading_without_a_unit_is_refused(string value)
    {
        var said = await bench.Run("read", "2026-001", "C3", "--value", value);

        Assert.Equal(3, said.Code);
        Assert.Contains(value.Split(' ')[^1], said.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_complaint_of_100_kB_is_refused_by_its_length()
    {
        var said = await bench.Run("ask", "--machine", "Aldine C-1", new string('x', 100_000));

        Assert.Equal((3, "The complaint has 100,000 characters; 20,000 are the most. Shorten it, and attach long text as a file."), (said.Code, said.Error));
    }

    /// <summary>Nothing is recognised, so the answer is how often each cause is met, and it says that nothing was understood.</summary>
    [Theory]
    [InlineData("🔥🔥😵‍💫")]
    [InlineData("экран пустой, звука нет")]
    [InlineData("電源は入るが音が出ない")]
    public async Task A_complaint_nobody_can_read_is_answered_with_that(string complaint)
    {
        var said = await bench.Run("ask", "--machine", "Aldine C-1", complaint);

        Assert.Equal(0, said.Code);
        Assert.Contains("Nothing that a note lists.", said.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_unknown_machine_is_taken_in_all_the_same_and_that_is_said()
    {
        var said = await bench.Run("take-in", "--machine", "Nobody 7", "no chime");

        Assert.Equal(0, said.Code);
        Assert.Contains("No note knows the machine", said.Output, StringComparison.Ordinal);
        var job = await bench.Json("job", "2026-002");
        Assert.Equal("Nobody 7", job.GetProperty("job").Text("unit"));
    }

    [Fact]
    public async Task Words_that_would_move_the_cursor_are_printed_without_that()
    {
        await bench.Json("line", "2026-001", "\u001b[2Jgone\u0007");

        var said = await bench.Run("job", "2026-001");

        Assert.DoesNotContain('\u001b', said.Output);
        Assert.Contains("[2Jgone", said.Output, StringComparison.Ordinal);
    }

    private string Written() => string.Join('\n', Directory.EnumerateFiles(bench.Folder("small"), "*.md", SearchOption.AllDirectories).Order().Select(f => f + File.ReadAllText(f)));
}
