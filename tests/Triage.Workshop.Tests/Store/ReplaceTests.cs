using System.Text;
using Triage.Workshop.Books;
using Xunit;

namespace Triage.Workshop.Tests.Store;

/// <summary>An edit of a whole note.</summary>
public sealed class ReplaceTests
{
    [Fact]
    public void NoteAsItWasRead_IsReplaced()
    {
        using var book = new SmallBook();
        var folder = Folder(book);

        Assert.Null(folder.Replace(SmallBook.JobPath, folder.Read(SmallBook.JobPath), "mine"u8.ToArray()));

        Assert.Equal("mine", File.ReadAllText(book.At(SmallBook.JobPath)));
    }

    [Fact]
    public void NoteThatChangedMeanwhile_IsRefused_AndBothVersionsAreKept()
    {
        using var book = new SmallBook();
        var folder = Folder(book);
        var asRead = folder.Read(SmallBook.JobPath);
        book.Write(SmallBook.JobPath, "theirs");

        var first = folder.Replace(SmallBook.JobPath, asRead, "mine"u8.ToArray());
        var second = folder.Replace(SmallBook.JobPath, asRead, "mine too"u8.ToArray());

        Assert.Equal("theirs", File.ReadAllText(book.At(SmallBook.JobPath)));
        Assert.Equal(RefusalKind.ChangedMeanwhile, first!.Kind);
        Assert.Equal("mine", File.ReadAllText(book.At(first.KeptAt!)));
        Assert.Equal("mine too", File.ReadAllText(book.At(second!.KeptAt!)));
        Assert.Equal(
            "jobs/2026/2026-001.md was changed by somebody else since you read it. Theirs is in place, yours is kept at .bench/kept/2026-001.20261102-080000-000.md. Read theirs and enter again what is missing.",
            first.ToString());
    }

    [Fact]
    public void NoteThatWasDeletedMeanwhile_IsRefused_AndMineIsKept()
    {
        using var book = new SmallBook();
        var folder = Folder(book);
        var asRead = folder.Read(SmallBook.JobPath);
        File.Delete(book.At(SmallBook.JobPath));

        var refused = folder.Replace(SmallBook.JobPath, asRead, "mine"u8.ToArray());

        Assert.False(File.Exists(book.At(SmallBook.JobPath)));
        Assert.Equal("mine", File.ReadAllText(book.At(refused!.KeptAt!)));
    }

    [Fact]
    public void EditorThatSavesUnderAnAppend_LosesNothing()
    {
        using var book = new SmallBook();
        var saves = 0;

        var refused = Folder(book).Change(SmallBook.JobPath, now =>
        {
            if (saves++ == 0)
                book.Write(SmallBook.JobPath, "the editor's");
            return [.. now, .. " and mine"u8];
        });

        Assert.Null(refused);
        Assert.Equal("the editor's and mine", File.ReadAllText(book.At(SmallBook.JobPath)));
    }

    [Fact]
    public void ReplacedNote_KeepsWhoMayReadIt()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows has no such modes.");
        using var book = new SmallBook();
        var mode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(book.At(SmallBook.JobPath), mode);

        Assert.Null(Folder(book).Change(SmallBook.JobPath, now => [.. now, .. Encoding.UTF8.GetBytes("more\n")]));

        if (!OperatingSystem.IsWindows())
            Assert.Equal(mode, File.GetUnixFileMode(book.At(SmallBook.JobPath)));
    }

    [Theory]
    [InlineData("../outside.md")]
    [InlineData("/etc/outside.md")]
    public void PathsThatLeaveTheBook_AreNotWritten(string path)
    {
        using var book = new SmallBook();

        Assert.Throws<ArgumentException>(() => Folder(book).Create(path, "x"u8.ToArray()));
    }

    private static BookFolder Folder(SmallBook book) => new(new("demo", book.Folder, Writable: true), book.Clock);
}
