namespace Triage.Cli.Tests.Commands;

/// <summary>Which books are opened, and which is written to.</summary>
public sealed class BookTests : IDisposable
{
    private readonly TestBench bench = TestBench.Small();

    public void Dispose() => bench.Dispose();

    [Fact]
    public async Task A_plain_folder_is_named_after_itself()
    {
        var note = await Run("note", "chime", "--json", "--book", bench.Folder("small"));

        Assert.Contains("\"book\": \"small\"", note.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(":known")]
    [InlineData(":stranger")]
    public async Task A_book_of_others_is_not_written_to(string trust)
    {
        var said = await Run("line", "2026-001", "C3 short", "--book", $"theirs={bench.Folder("small")}{trust}");

        Assert.Equal(5, said.Code);
        Assert.Contains("book “theirs” was opened for reading only", said.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Two_books_of_one_name_are_refused()
    {
        var said = await Run("shelf", "--book", bench.Folder("small"), "--book", bench.Folder("small"));

        Assert.Equal((3, "Two books are called “small”. Give each its own name: --book NAME=FOLDER."), (said.Code, said.Error));
    }

    private static async Task<Said> Run(params string[] args)
    {
        var (output, errors) = (new StringWriter(), new StringWriter());
        return new(await TriageCommand.RunAsync(args, output, errors, TimeProvider.System), output.ToString(), errors.ToString());
    }
}
