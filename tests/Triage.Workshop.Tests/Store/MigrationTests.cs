using Triage.Workshop.Books;
using Xunit;

namespace Triage.Workshop.Tests.Store;

/// <summary>A book of format 1 brought to the present format.</summary>
public sealed class MigrationTests : IDisposable
{
    private readonly SmallBook book = new();

    private BookSource Source => new("demo", book.Folder, Trust.Own, Writable: true);

    public void Dispose()
    {
        foreach (var backup in Directory.EnumerateDirectories(Path.GetDirectoryName(book.Folder)!, $"{Path.GetFileName(book.Folder)}-*"))
            Directory.Delete(backup, recursive: true);
        book.Dispose();
    }

    [Fact]
    public void Preview_ShowsTheLine_AndWritesNothing()
    {
        var shown = Migration.Preview(Source);

        Assert.Equal(new MigratedNote(SmallBook.JobPath, 2, "format: 1", "format: 2"), Assert.Single(shown.Notes));
        Assert.Equal(SmallBook.OpenJob, File.ReadAllText(book.At(SmallBook.JobPath)));
    }

    [Fact]
    public void OnlyTheLineOfTheFormatChanges_AndTheBookAsItWasLiesBeside()
    {
        var odd = SmallBook.OpenJob.Replace("format: 1", "format:   1   # the first", StringComparison.Ordinal).Replace("\n", "\r\n", StringComparison.Ordinal);
        book.Write(SmallBook.JobPath, odd);

        var written = Migration.Write(Source, book.Clock);

        Assert.Null(written.Refused);
        Assert.Equal(odd.Replace("format:   1", "format: 2", StringComparison.Ordinal), File.ReadAllText(book.At(SmallBook.JobPath)));
        Assert.Equal(odd, File.ReadAllText(Path.Combine(written.Backup!, SmallBook.JobPath)));
    }

    [Fact]
    public void WhatIsWrittenIsNotChangedAgain()
    {
        Migration.Write(Source, book.Clock);

        var again = Migration.Write(Source, book.Clock);

        Assert.Empty(again.Notes);
        Assert.Null(again.Backup);
    }

    [Fact]
    public void NoteWithoutAFormatGetsOne()
    {
        book.Write(SmallBook.JobPath, SmallBook.OpenJob.Replace("format: 1\n", "", StringComparison.Ordinal));

        Migration.Write(Source, book.Clock);

        Assert.Contains("\nformat: 2\n", File.ReadAllText(book.At(SmallBook.JobPath)), StringComparison.Ordinal);
        Assert.NotNull(book.OnDisk());
    }

    [Theory]
    [InlineData("---\nformat: 9\nkind: fault\nid: a\nname: A\n---\n", "Format 9")]
    [InlineData("---\nformat: 1\nkind: fault\nid: a\nname: [A\n---\n", "bracket")]
    public void NoteThatCannotBeReadStaysAsItIs(string text, string why)
    {
        book.Write("a.md", text);

        var written = Migration.Write(Source, book.Clock);

        Assert.Contains(why, Assert.Single(written.Left).Why, StringComparison.Ordinal);
        Assert.Equal(text, File.ReadAllText(book.At("a.md")));
        Assert.Single(written.Notes);
    }
}
